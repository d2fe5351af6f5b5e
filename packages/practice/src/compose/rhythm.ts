import type { Random } from '@reedplate/pitch';
import { type Chain, drawChain, layDraws, type Rule } from './chain.js';
import type { RhythmCell } from './rhythm-cells.js';

/** How many notes begin in a bar. */
export interface Density {
  readonly fewest: number;
  readonly most: number;
}

/** A note of a phrase before it has a pitch, in ticks from the beginning of the phrase. */
export interface Beat {
  readonly start: number;
  readonly duration: number;
}

/** A phrase to lay a rhythm in. */
export interface RhythmFrame {
  readonly bars: number;
  readonly beatsPerBar: number;
  readonly beatTicks: number;
}

/**
 * A rhythm for a phrase, beat by beat, each cell with the chance of its weight: so many notes in
 * each bar, fewer in the last, whose last beat is left to breathe. `undefined` where no cells give that.
 */
export function drawRhythm(
  frame: RhythmFrame,
  cells: readonly RhythmCell[],
  density: Density,
  random: Random,
): readonly Beat[] | undefined {
  const draws = layDraws(rhythmChain(frame, cells, density));
  if (draws === undefined) return undefined;
  return layBeats(drawChain(draws, random), cells, frame.beatTicks);
}

function rhythmChain(
  { bars, beatsPerBar }: RhythmFrame,
  cells: readonly RhythmCell[],
  density: Density,
): Chain {
  const beats = bars * beatsPerBar;
  const cell = (option: number): RhythmCell => cells[option] as RhythmCell;
  const notesOf = (option: number): number => cell(option).notes.length;
  return {
    options: Array.from({ length: beats }, () => cells.length),
    weight: (place, _, option) => {
      const isBreath = place === beats - 1;
      const { notes, holds = false, weight } = cell(option);
      return isBreath && (notes.length > 0 || holds) ? 0 : weight;
    },
    rules: [
      countNotes(beatsPerBar, beats, density, notesOf),
      hasNotes(notesOf),
      holdOnlyNotes((option) => cell(option)),
    ],
  };
}

/** Notes in each bar within the density; the last bar of a phrase may have fewer. */
function countNotes(
  beatsPerBar: number,
  beats: number,
  { fewest, most }: Density,
  notesOf: (option: number) => number,
): Rule {
  return {
    states: most + 1,
    start: 0,
    next: (state, place, option) => {
      const before = place % beatsPerBar === 0 ? 0 : state;
      const count = before + notesOf(option);
      if (count > most) return undefined;
      const endsBar = (place + 1) % beatsPerBar === 0;
      const isLastBar = place >= beats - beatsPerBar;
      const needed = isLastBar && beats > beatsPerBar ? 0 : fewest;
      return endsBar && count < needed ? undefined : count;
    },
    ends: () => true,
  };
}

/** A phrase has a note at least. */
function hasNotes(notesOf: (option: number) => number): Rule {
  return {
    states: 2,
    start: 0,
    next: (state, _, option) => (notesOf(option) > 0 ? 1 : state),
    ends: (state) => state === 1,
  };
}

/** A cell holds only what sounds to the end of the beat before. */
function holdOnlyNotes(cell: (option: number) => RhythmCell): Rule {
  return {
    states: 2,
    start: 0,
    next: (sounds, _, option) => {
      const { notes, holds = false } = cell(option);
      if (holds && sounds === 0) return undefined;
      const last = notes.at(-1);
      if (last === undefined) return holds ? 1 : 0;
      return last[0] + last[1] >= 1 ? 1 : 0;
    },
    ends: () => true,
  };
}

function layBeats(
  drawn: readonly number[],
  cells: readonly RhythmCell[],
  beatTicks: number,
): readonly Beat[] {
  const laid: { start: number; duration: number }[] = [];
  for (const [beat, option] of drawn.entries()) {
    const { notes, holds = false } = cells[option] as RhythmCell;
    const begin = beat * beatTicks;
    const held = laid.at(-1);
    if (holds && held !== undefined) {
      held.duration = begin + Math.round((notes[0]?.[0] ?? 1) * beatTicks) - held.start;
    }
    for (const [start, length] of notes) {
      const from = Math.round(start * beatTicks);
      const to = Math.round((start + length) * beatTicks);
      laid.push({ start: begin + from, duration: to - from });
    }
  }
  return laid;
}
