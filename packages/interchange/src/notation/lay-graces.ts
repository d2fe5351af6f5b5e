import type { TimedNote } from '@reedplate/line';
import type { GraceNote } from './measure.js';
import { playedOver } from './played.js';

/** Grace notes that sound together, and the tick of the note that they lead to. */
export interface GraceGroup {
  readonly target: number;
  readonly notes: readonly GraceNote[];
}

/** Longest grace note: a 32nd. */
const LONGEST = 120;

/**
 * Grace notes in time: one after another before the note that they lead to, within the second half of
 * what lies between it and the beginning of the note before. Where there is no time before it, as at the
 * very beginning, they begin with it.
 *
 * @param groups in the order they are played
 */
export function layGraces(
  groups: readonly GraceGroup[],
  notes: readonly TimedNote[],
): readonly TimedNote[] {
  if (groups.length === 0) return [];
  const starts = [...new Set(notes.map(({ start }) => start))].sort((a, b) => a - b);
  const laid: TimedNote[] = [];
  for (const run of runsOf(groups)) {
    const target = run[0]?.target ?? 0;
    const room = target - lastBefore(starts, target);
    const duration = Math.min(LONGEST, Math.max(1, Math.floor(room / 2 / run.length)));
    const hasRoom = room > run.length;
    for (const [at, group] of run.entries()) {
      const start = hasRoom ? target - (run.length - at) * duration : target;
      laid.push(...group.notes.map((note) => toNote(note, start, hasRoom ? duration : LONGEST)));
    }
  }
  return laid;
}

function toNote({ pitch, played }: GraceNote, start: number, duration: number): TimedNote {
  return { start, duration, pitch, grace: true, ...playedOver(played, duration) };
}

/** Groups that lead to the same note. */
function runsOf(groups: readonly GraceGroup[]): readonly (readonly GraceGroup[])[] {
  const runs = new Map<number, GraceGroup[]>();
  for (const group of groups) {
    const run = runs.get(group.target);
    if (run === undefined) runs.set(group.target, [group]);
    else run.push(group);
  }
  return [...runs.values()];
}

/** The last beginning before a tick, 0 where none is; by halving. */
function lastBefore(starts: readonly number[], tick: number): number {
  let low = 0;
  let high = starts.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((starts[middle] ?? tick) < tick) low = middle + 1;
    else high = middle;
  }
  return starts[low - 1] ?? 0;
}
