import type { BeatGrid } from './align.js';
import type { Heard } from './sounded.js';
import { distanceFromGrid } from './timing.js';

/** Shorter notes than this that lead on to another are grace notes, in felt beats. */
const SHORT = 1 / 8;

/** How soon after a grace note its own note is struck, in felt beats. */
const SOON = 1 / 16;

/**
 * The notes without their grace notes. A grace note is part of the note that it leads to and is not
 * judged by itself; the time that it takes goes back to the note it was taken from: to its own where it
 * is struck on the beat, to the one before where it is struck just before.
 */
export function takeInGraces(notes: readonly Heard[], grid: BeatGrid): readonly Heard[] {
  const kept: Heard[] = [];
  // Where the note last kept begins with its grace notes, and how long the note before may last.
  let [from, until] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  // From the end, so that a grace note before a grace note leads to the same note.
  for (let at = notes.length - 1; at >= 0; at -= 1) {
    const note = notes[at] as Heard;
    const own = kept.at(-1);
    if (own === undefined || !isGrace(note, own, from, grid)) {
      kept.push(note.end === from && until > from ? { ...note, end: until } : note);
      from = note.start;
      until = from;
      continue;
    }
    from = note.start;
    if (distanceOf(from, grid) >= distanceOf(own.start, grid)) continue;
    kept[kept.length - 1] = { ...own, start: from };
    until = from;
  }
  return kept.reverse();
}

/** Whether a note is marked as a grace note, or short, and leads on to one that is longer. */
function isGrace(note: Heard, own: Heard, from: number, { beatTicks }: BeatGrid): boolean {
  const { start, end, grace = false } = note;
  const length = end - start;
  const leads = grace ? from >= start : from > start && Math.abs(from - end) <= SOON * beatTicks;
  return leads && (grace || length < SHORT * beatTicks) && own.end - own.start > length;
}

function distanceOf(tick: number, { pickup, beatTicks }: BeatGrid): number {
  return distanceFromGrid((tick - pickup) / beatTicks);
}
