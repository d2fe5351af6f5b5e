import type { Part } from './cut-notes.js';
import { STEP } from './figure.js';
import type { Judged } from './judge.js';
import type { Placed } from './place-notes.js';

/**
 * The note that a part resolves to: a tone of its chord, a step away, struck with the next onset and
 * within the window after the part began. Half steps are preferred to whole, up to down. Three
 * resolutions take the note after next: a note that is struck again resolves through its
 * repetition, and the first of two passing notes, step by step in one direction to a tone, with the
 * second, both within twice the window; one of an enclosure, a step above and a step below a tone,
 * resolves to the tone enclosed.
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

/** What a part resolves to through the note after it: its repetition, a run, or an enclosure. */
function resolutionThrough({ note, start }: Part, next: Judged, within: number): Placed | null {
  const target = next.resolvesTo;
  if (target === null || next.part.tone || next.part.note.start <= start) return null;
  const wait = target.start - start;
  const [first, then] = [next.part.note.pitch - note.pitch, target.pitch - next.part.note.pitch];
  if (first === 0 || isRun(first, then)) return wait <= 2 * within ? target : null;
  const around = first + then;
  const encloses = Math.sign(around) === -Math.sign(then) && rankOf(around) < FARTHEST;
  return encloses && wait <= within ? target : null;
}

/** Whether two moves are steps in one direction. */
function isRun(first: number, then: number): boolean {
  const areSteps = rankOf(first) < FARTHEST && rankOf(then) < FARTHEST;
  return areSteps && Math.sign(first) === Math.sign(then);
}

/** Rank of a move that is no step. */
const FARTHEST = 2 * STEP;

/** Half a step up, half down, a whole up, a whole down; what is no step ranks last. */
function rankOf(move: number): number {
  if (move === 0 || Math.abs(move) > STEP) return FARTHEST;
  return 2 * (Math.abs(move) - 1) + (move > 0 ? 0 : 1);
}
