import type { Breath, Hole, Sounding } from '@reedplate/layout';

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
 * @example
 * ```ts
 * import { markOf } from '@reedplate/tab';
 *
 * markOf({ hole: 3, breath: 'draw', technique: 'bend', depth: 2 }); // => { hole: 3, breath: 'draw', bend: 2, over: false }
 * ```
 */
export function markOf({ hole, breath, technique, depth }: Omit<Sounding, 'pitch'>): TabMark {
  const over = technique === 'overblow' || technique === 'overdraw';
  return Object.freeze({ hole, breath, bend: over ? 0 : depth, over });
}
