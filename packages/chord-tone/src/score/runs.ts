import type { Line, TimedNote } from '@reedplate/line';

/** Notes of a line as columns of numbers, tied parts made one, in the order of their onsets. */
export interface Runs {
  readonly count: number;
  /** Ticks of the chart, after alignment; may be negative. */
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly pitch: Uint8Array;
  /** Index in the line of the first note of each. */
  readonly index: Int32Array;
}

/**
 * Joins notes of one pitch that touch: a line has no ties, so a note that begins just as another
 * of its pitch ends is its continuation.
 *
 * @param shift ticks added to every time
 */
export function joinTies({ notes }: Pick<Line, 'notes'>, shift: number): Runs {
  const start = new Float64Array(notes.length);
  const end = new Float64Array(notes.length);
  const pitch = new Uint8Array(notes.length);
  const index = new Int32Array(notes.length);
  const latest = new Int32Array(128).fill(-1);
  let count = 0;
  for (let at = 0; at < notes.length; at += 1) {
    const note = notes[at] as TimedNote;
    const from = note.start + shift;
    const before = latest[note.pitch] as number;
    if (before >= 0 && end[before] === from) {
      end[before] = from + note.duration;
      continue;
    }
    start[count] = from;
    end[count] = from + note.duration;
    pitch[count] = note.pitch;
    index[count] = at;
    latest[note.pitch] = count;
    count += 1;
  }
  return { count, start, end, pitch, index };
}

/** The same runs so many ticks earlier. */
export function moveEarlier(runs: Runs, ticks: number): Runs {
  if (ticks === 0) return runs;
  const earlier = (time: number): number => time - ticks;
  return { ...runs, start: runs.start.map(earlier), end: runs.end.map(earlier) };
}
