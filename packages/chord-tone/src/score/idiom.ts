import type { Part } from './cut-notes.js';
import type { Judged } from './judge.js';

const FLAT_THIRD = 3;
const THIRD = 4;
const FOURTH = 5;
const FLAT_FIFTH = 6;

/** Longest time from a note of a turn to the next of it, in felt beats: a bar of four. */
const TURN_WITHIN = 4;

/**
 * Whether a note begins a turn of the blues over its chord: the flat third goes up to the third or
 * down to the root, the fourth down to such a flat third, the flat fifth down to such a fourth. In
 * passing or held, and also where it is struck again first, in any octave. Common practice, no source.
 *
 * @param ahead the first part of each note struck next, judged
 */
export function isTurn(part: Part, ahead: readonly Judged[], beatTicks: number): boolean {
  const { note, table, last, tone, start } = part;
  if (!last || tone || table.root < 0) return false;
  const above = (note.pitch - table.root + 12) % 12;
  if (above !== FLAT_THIRD && above !== FOURTH && above !== FLAT_FIFTH) return false;
  const isNear = (next: Judged): boolean => next.part.note.start - start <= TURN_WITHIN * beatTicks;
  return ahead.some((next) => isNear(next) && leadsOn(above, part, next));
}

/** Whether a degree of the blues moves on to the next as a turn does. */
function leadsOn(above: number, { note, table }: Part, next: Judged): boolean {
  const to = (next.part.note.pitch - table.root + 12) % 12;
  const goesOn = next.class === 'idiom' && next.part.table.root === table.root;
  if (next.part.note.pitch === note.pitch) return goesOn;
  if (above === FLAT_THIRD)
    return to === 0 || (to === THIRD && table.tone[next.part.note.pitch % 12] === 1);
  return goesOn && to === (above === FOURTH ? FLAT_THIRD : FOURTH);
}
