import { requireOneOf, requireShape } from '@reedplate/pitch';

/** The two breaths. */
export type Breath = 'blow' | 'draw';

/** The two breaths, blow first. */
export const BREATHS: readonly Breath[] = Object.freeze(['blow', 'draw']);

/** A hole of a harp, counted from the low end. */
export type Hole = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15 | 16;

/**
 * The techniques.
 *
 * @internal
 */
export const TECHNIQUES = Object.freeze([
  'natural',
  'bend',
  'overblow',
  'overdraw',
  'valved-bend',
] as const);

/** How a pitch is got from a hole. */
export type Technique = (typeof TECHNIQUES)[number];

/** A short word for a player: unbent notes only; bends too; bends and overbends. */
export type TechniqueLevel = 'natural' | 'bends' | 'overbends';

/** The technique levels, each holding all of the one before. */
export const TECHNIQUE_LEVELS: readonly TechniqueLevel[] = Object.freeze([
  'natural',
  'bends',
  'overbends',
]);

/** One way to sound one pitch on a harp. */
export interface Sounding {
  readonly hole: Hole;
  readonly breath: Breath;
  readonly technique: Technique;
  /**
   * Semitones away from the unbent note: 0 natural, 1 and up below the breath's own reed for a
   * bend, 1 above the hole's higher reed for an overbend.
   */
  readonly depth: number;
  /** MIDI number. */
  readonly pitch: number;
}

/**
 * The breath of the other reed.
 *
 * @example
 * ```ts
 * import { otherBreath } from '@reedplate/layout';
 *
 * otherBreath('blow'); // => 'draw'
 * ```
 */
export function otherBreath(breath: Breath): Breath {
  requireOneOf(breath, BREATHS, { what: 'a breath' });
  return breath === 'blow' ? 'draw' : 'blow';
}

const SOUNDING = { what: 'a sounding of a harp', code: 'OPTION_UNKNOWN' } as const;

/**
 * Which reeds of the hole take part in a sounding: its own for an unbent note or a valved bend,
 * both for a bend, the other one alone for an overbend. Bahnson, Antaki and Beery (1998), J.
 * Acoust. Soc. Am. 103(4), abstract.
 *
 * @example
 * ```ts
 * import { makeHarp, reedsSounding, soundingsAt } from '@reedplate/layout';
 *
 * soundingsAt(makeHarp('C'), 4, 'draw').map(reedsSounding); // => [['draw'], ['blow', 'draw']]
 * ```
 */
export function reedsSounding(sounding: Pick<Sounding, 'breath' | 'technique'>): readonly Breath[] {
  const { breath, technique } = requireShape(sounding, {}, SOUNDING);
  requireOneOf(technique, TECHNIQUES, { what: 'a technique' });
  if (technique === 'bend') return BREATHS;
  const overbent = technique === 'overblow' || technique === 'overdraw';
  const other = otherBreath(breath);
  return Object.freeze([overbent ? other : breath]);
}
