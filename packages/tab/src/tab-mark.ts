import { BREATHS, type Breath, type Hole, type Sounding, TECHNIQUES } from '@reedplate/layout';
import { ReedplateError, requireInteger, requireOneOf, requireShape } from '@reedplate/pitch';

/** One hole of tablature: what to do, before a harp says what sounds. */
export interface TabMark {
  readonly hole: Hole;
  readonly breath: Breath;
  /** Semitones bent down; 0 for none. */
  readonly bend: number;
  /** An overbend: an overblow on a blow, an overdraw on a draw. */
  readonly over: boolean;
}

/** Marks that sound together: one for a single note, several for a chord or a split. */
export type TabEvent = readonly TabMark[];

/**
 * The mark that tablature writes for a sounding. Tablature has no sign of its own for a valved
 * bend: it is written as a bend.
 *
 * @throws ReedplateError `TAB_SYNTAX` for what is no sounding
 * @example
 * ```ts
 * import { markOf } from '@reedplate/tab';
 *
 * markOf({ hole: 3, breath: 'draw', technique: 'bend', depth: 2 }); // => { hole: 3, breath: 'draw', bend: 2, over: false }
 * ```
 */
export function markOf(sounding: Omit<Sounding, 'pitch'>): TabMark {
  const { hole, breath, technique, depth } = requireShape(sounding, {}, SOUNDING);
  requireOneOf(technique, TECHNIQUES, { what: 'a technique' });
  const over = technique === 'overblow' || technique === 'overdraw';
  return Object.freeze(requireMark({ hole, breath, bend: over ? 0 : depth, over }));
}

const SOUNDING = { what: 'a sounding, as soundings gives it', code: 'TAB_SYNTAX' } as const;
const MARK = { what: 'a mark, as parseTab gives it', code: 'TAB_SYNTAX' } as const;
const MOST_HOLES = 16;
const DEEPEST = 127;

/**
 * The mark itself, if it is one.
 *
 * @throws ReedplateError `TAB_SYNTAX`, `OPTION_UNKNOWN` for a wrong breath
 */
export function requireMark(mark: TabMark): TabMark {
  const { hole, breath, bend, over } = requireShape(mark, {}, MARK);
  const { code } = MARK;
  requireInteger(hole, { min: 1, max: MOST_HOLES, what: 'a hole', code });
  requireInteger(bend, { min: 0, max: DEEPEST, what: 'semitones of a bend', code });
  requireOneOf(breath, BREATHS, { what: 'a breath', where: { hole } });
  if (typeof over !== 'boolean') {
    throw new ReedplateError({ code, value: over, expected: MARK.what, where: { path: 'over' } });
  }
  return mark;
}
