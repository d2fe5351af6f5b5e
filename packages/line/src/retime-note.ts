import type { PitchPoint, TimedNote } from './line.js';

/**
 * A note at another time and of another length, played as before: its pitch curve is stretched with it.
 * Points that fall on one tick become the last of them.
 *
 * @internal
 * @example
 * ```ts
 * import { retimeNote } from '@reedplate/line';
 *
 * const scoop = { start: 0, duration: 960, pitch: 67, curve: [{ at: 0, cents: -90 }, { at: 240, cents: 0 }] };
 * retimeNote(scoop, { start: 480, duration: 480 }).curve?.map(({ at }) => at); // => [0, 120]
 * ```
 */
export function retimeNote(
  note: TimedNote,
  { start, duration }: Pick<TimedNote, 'start' | 'duration'>,
): TimedNote {
  const { curve, ...rest } = note;
  const points = curve && stretch(curve, duration / note.duration);
  return { ...rest, start, duration, ...(points === undefined ? {} : { curve: points }) };
}

function stretch(curve: readonly PitchPoint[], ratio: number): readonly PitchPoint[] {
  const moved = curve.map(({ at, cents }) => ({ at: Math.round(at * ratio), cents }));
  return moved.filter(({ at }, index) => at !== moved[index + 1]?.at);
}
