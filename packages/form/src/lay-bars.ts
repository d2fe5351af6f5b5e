import { type Metre, readMetre } from '@reedplate/line';
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

/** Lays bars on the beat grid, one after the other, each chord spelled once for the key. */
export function layBars(bars: readonly PlannedBar[], grid: ChartGrid): readonly ChordSpan[] {
  const { barTicks, beatTicks } = readMetre(grid.metre);
  const chordOf = chordSpeller(grid.key);
  const spans = bars.flatMap(({ chords, chorus, barOfForm }, index) => {
    const barStart = grid.pickup + index * barTicks;
    const edges = edgesOf(chords, barTicks);
    return chords.map(({ numeral }, at): ChordSpan => {
      const [from = 0, to = barTicks] = edges.slice(at, at + 2);
      return Object.freeze({
        start: barStart + from,
        end: barStart + to,
        chorus,
        bar: index + 1,
        barOfForm,
        beat: from / beatTicks + 1,
        numeral,
        chord: numeral === null ? null : chordOf(numeral),
      });
    });
  });
  return Object.freeze(spans);
}

/** Ticks within the bar at which each chord begins, and the end of the bar. */
function edgesOf(chords: FormBar, barTicks: number): readonly number[] {
  const total = sharesOf(chords);
  const edges = [0];
  let before = 0;
  for (const { weight } of chords) {
    before += weight;
    edges.push(Math.round((barTicks * before) / total));
  }
  return edges;
}

function chordSpeller(key: Key): (numeral: string) => Chord {
  const known = new Map<string, Chord>();
  return (numeral) => {
    const chord = known.get(numeral) ?? chordOfNumeral(numeral, key);
    known.set(numeral, chord);
    return chord;
  };
}
