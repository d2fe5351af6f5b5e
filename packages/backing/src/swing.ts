import { deepFreeze, requireOneOf, requirePositive } from '@reedplate/pitch';

/** Who plays eighths: the band, led by its cymbal, or who plays a line over it. */
export const SWING_ROLES = Object.freeze(['band', 'soloist'] as const);

/** Who plays eighths; see {@link SWING_ROLES}. */
export type SwingRole = (typeof SWING_ROLES)[number];

/** How long eighths are by tempo. */
interface SwingByTempo {
  /** Seconds that the short eighth keeps, from medium tempos up. */
  readonly short: number;
  /** Long to short at most, when slow, and at least, when fast. */
  readonly most: number;
  readonly least: number;
  readonly source: string;
}

/**
 * Swing as it was measured, by role. A cymbal keeps its short eighth near 100 ms, from 3.5 to 1 when slow to even
 * when fast; soloists swing less, about 1.3 to 1. That bass and chords go with the cymbal is our own choice.
 */
export const SWING_BY_ROLE: Readonly<Record<SwingRole, SwingByTempo>> = /* @__PURE__ */ deepFreeze({
  band: {
    short: 0.1,
    most: 3.5,
    least: 1,
    source: 'Friberg and Sundström (2002), Music Perception 19(3)',
  },
  soloist: {
    short: 0.1,
    most: 1.3,
    least: 1,
    source: 'Corcoran and Frieler (2021), Music Perception 38(4)',
  },
});

/** A blues shuffle is a triplet, at any tempo. Common practice; ours unless told. */
export const SHUFFLE_RATIO = 2;

const FASTEST = 1000;

/**
 * The long to the short eighth of a jazz band or a soloist at a tempo; a blues shuffle has 2 at any.
 *
 * @param tempo quarter notes a minute, above 0 and at most 1000
 * @throws ReedplateError `OPTION_UNKNOWN` for a role, `NUMBER_RANGE` for a tempo
 * @example
 * ```ts
 * import { swingRatio } from '@reedplate/backing';
 *
 * swingRatio('band', 120); // => 3.5
 * swingRatio('band', 200); // => 2
 * swingRatio('band', 320); // => 1
 * swingRatio('soloist', 120); // => 1.3
 * swingRatio('drummer' as 'band', 120); // throws OPTION_UNKNOWN
 * ```
 */
export function swingRatio(role: SwingRole, tempo: number): number {
  requireOneOf(role, SWING_ROLES, { what: 'who plays' });
  const beat = 60 / requirePositive(tempo, { max: FASTEST, what: 'quarter notes a minute' });
  const { short, most, least } = SWING_BY_ROLE[role];
  const ratio = (beat - short) / short;
  return Math.round(Math.max(least, Math.min(most, ratio)) * 1000) / 1000;
}
