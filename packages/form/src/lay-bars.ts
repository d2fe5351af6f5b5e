import { type Metre, parseMetre } from '@reedplate/line';
import { type Chord, chordOfNumeral, type Key } from '@reedplate/pitch';
import { sharesOf } from './shares.js';
import type { ChordSpan, FormBar } from './types.js';

/** A bar of a chart before it has chords in a key. */
export interface PlannedBar {
  readonly chords: FormBar;
  /** Chorus, from 1; 0 in the introduction. */
  readonly chorus: number;
  /** Bar of the form it is or was taken from, from 1. */
  readonly barOfForm: number;
}

/** The beat grid and the key that bars are laid on. */
export interface ChartGrid {
  readonly metre: Metre;
  readonly pickup: number;
  readonly key: Key;
}

/**
 * Lays bars on the beat grid, one after the other, chords spelled for the key. A chord begins where
 * the one before it ends, so that rounding leaves no gap.
 */
export function layBars(bars: readonly PlannedBar[], grid: ChartGrid): readonly ChordSpan[] {
  const { barTicks, beatTicks } = parseMetre(grid.metre);
  const chordOf = chordSpeller(grid.key);
  const spans: ChordSpan[] = [];
  for (const [index, { chords, chorus, barOfForm }] of bars.entries()) {
    const barStart = grid.pickup + index * barTicks;
    const shares = sharesOf(chords);
    let sharesBefore = 0;
    let from = 0;
    for (const { numeral, weight } of chords) {
      sharesBefore += weight;
      const to = Math.round((barTicks * sharesBefore) / shares);
      const start = barStart + from;
      const end = barStart + to;
      const beat = from / beatTicks + 1;
      const chord = numeral === null ? null : chordOf(numeral);
      const span = { start, end, chorus, bar: index + 1, barOfForm, beat, numeral, chord };
      spans.push(Object.freeze(span));
      from = to;
    }
  }
  return Object.freeze(spans);
}

/** Spells each chord of a chart once: all bars of a chord share one object. */
function chordSpeller(key: Key): (numeral: string) => Chord {
  const spelled = new Map<string, Chord>();
  return (numeral) => {
    const chord = spelled.get(numeral) ?? chordOfNumeral(numeral, key);
    spelled.set(numeral, chord);
    return chord;
  };
}
