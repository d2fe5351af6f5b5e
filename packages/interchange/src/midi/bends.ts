import type { WarningList } from '../warning.js';
import type { MidiEvent } from './events.js';

/** A bend that sounds from a tick on, in semitones. */
export interface Bend {
  /** In the file's ticks. */
  readonly tick: number;
  readonly semitones: number;
}

/** Range of a bend wheel, in semitones, where the file sets none: General MIDI. */
const USUAL_BEND_RANGE = 2;

/** The bends of a channel, in the order of time. */
export function bendsOf(events: readonly MidiEvent[]): readonly Bend[] {
  const bends: Bend[] = [];
  let range = USUAL_BEND_RANGE;
  let amount = 0;
  for (const event of events) {
    if (event.kind === 'bend-range') range = event.semitones;
    else if (event.kind === 'bend') amount = event.amount;
    else continue;
    const semitones = amount * range;
    // A wheel that has not left its rest bends nothing.
    if (semitones !== 0 || bends.length > 0) bends.push({ tick: event.tick, semitones });
  }
  return bends;
}

/** Bends read within all notes of a file: many notes may lie under the same ones. */
export interface BendBudget {
  left: number;
}

/** An hour of bending, sixty times a second. */
export const MOST_BENDS = 200_000;

/**
 * The bend that sounds when a note begins, and those that come while it sounds. Where the budget of the
 * file is used up, later bends of the note are left out.
 */
export function bendsWithin(
  bends: readonly Bend[],
  { from, to }: { readonly from: number; readonly to: number },
  { budget, warnings }: { readonly budget: BendBudget; readonly warnings: WarningList },
): readonly Bend[] {
  const before = lastBefore(bends, from);
  const within: Bend[] = [{ tick: from, semitones: bends[before]?.semitones ?? 0 }];
  for (let at = before + 1; at < bends.length; at += 1) {
    const bend = bends[at] as Bend;
    if (bend.tick >= to) break;
    budget.left -= 1;
    if (budget.left < 0) {
      warnings.add('data-malformed', {}, `more than ${MOST_BENDS} bends`);
      break;
    }
    within.push(bend);
  }
  return within;
}

/** Index of the last bend at or before a tick, −1 where none is; by halving. */
function lastBefore(bends: readonly Bend[], tick: number): number {
  let low = 0;
  let high = bends.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((bends[middle]?.tick ?? Number.POSITIVE_INFINITY) <= tick) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
