import type { Part } from './cut-notes.js';
import { STEP } from './figure.js';
import type { Judged } from './judge.js';
import type { Placed } from './place-notes.js';

/**
 * The note that a part resolves to: a tone of its chord, a step away, struck with the next onset and
 * within the window after the part began. Half steps are preferred to whole, up to down. Two
 * resolutions take the note after next: a note that is struck again resolves through its
 * repetition, within twice the window; and one of an enclosure, a step above and a step below a
 * tone, resolves to the tone enclosed.
 *
 * @param ahead the first part of each note struck next, judged
 * @param within ticks
 */
export function resolutionOf(part: Part, ahead: readonly Judged[], within: number): Placed | null {
  const { note, last, tone } = part;
  if (!last || tone) return null;
  let best: Placed | null = null;
  let bestRank = FARTHEST;
  for (const next of ahead) {
    const rank = next.part.tone ? rankOf(next.part.note.pitch - note.pitch) : FARTHEST;
    const wait = next.part.note.start - part.start;
    if (rank < bestRank && wait > 0 && wait <= within) {
      best = next.part.note;
      bestRank = rank;
    } else if (best === null) best = resolutionThrough(part, next, within);
  }
  return best;
}

/** What a part resolves to through the note after it: its repetition, or the other side of an enclosure. */
function resolutionThrough({ note, start }: Part, next: Judged, within: number): Placed | null {
  const target = next.resolvesTo;
  if (target === null || next.part.tone || next.part.note.start <= start) return null;
  const wait = target.start - start;
  if (next.part.note.pitch === note.pitch) return wait <= 2 * within ? target : null;
  const [here, there] = [target.pitch - note.pitch, target.pitch - next.part.note.pitch];
  const encloses = Math.sign(here) === -Math.sign(there) && rankOf(here) < FARTHEST;
  return encloses && wait <= within ? target : null;
}

/** Rank of a move that is no step. */
const FARTHEST = 2 * STEP;

/** Half a step up, half down, a whole up, a whole down; what is no step ranks last. */
function rankOf(move: number): number {
  if (move === 0 || Math.abs(move) > STEP) return FARTHEST;
  return 2 * (Math.abs(move) - 1) + (move > 0 ? 0 : 1);
}
