import type { BarScore, ChangeScore, NoteScore, Score } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import type { BarRange } from '../require-bars.js';

/** A note of a take, or as much of it as sounds in one bar. */
export interface BarNote {
  readonly note: NoteScore;
  /** Shares of the bar, from 0 to 1. */
  readonly from: number;
  readonly to: number;
  /** Whether the note is struck here, and not only held on from the bar before. */
  readonly isStruck: boolean;
}

/** A change within its bar. */
export interface BarChange {
  readonly change: ChangeScore;
  /** Share of the bar at which it comes. */
  readonly share: number;
}

/** A bar of a take, ready to be drawn. */
export interface TakeBar {
  /** From 1; 0 is the pickup. */
  readonly number: number;
  readonly chords: readonly string[];
  /** Mean credit of its notes; null for a bar of rest and for the pickup. */
  readonly chordFit: number | null;
  readonly notes: readonly BarNote[];
  readonly changes: readonly BarChange[];
}

/** The bars that were judged, with what was played in each. */
export function takeBarsOf(
  { bars, notes, changes }: Score,
  chart: Chart,
  range: BarRange | undefined,
): readonly TakeBar[] {
  const { barTicks, beatsPerBar } = parseMetre(chart.metre);
  const byBar = new Map<number, BarNote[]>();
  for (const note of notes) {
    for (const [bar, piece] of piecesOf(note, chart.pickup, barTicks)) {
      byBar.set(bar, [...(byBar.get(bar) ?? []), piece]);
    }
  }
  const shown = withPickup(bars, byBar.has(0)).filter(
    ({ bar }) => range === undefined || (bar >= range[0] && bar <= range[1]),
  );
  if (shown.length === 0) throw nothingIn(range);
  return shown.map(({ bar, chords, chordFit }) => ({
    number: bar,
    chords,
    chordFit,
    notes: byBar.get(bar) ?? [],
    changes: changes
      .filter((change) => change.bar === bar)
      .map((change) => ({ change, share: (change.beat - 1) / beatsPerBar })),
  }));
}

type JudgedBar = Pick<BarScore, 'bar' | 'chords' | 'chordFit'>;

function withPickup(bars: readonly BarScore[], hasPickup: boolean): readonly JudgedBar[] {
  return hasPickup ? [{ bar: 0, chords: [], chordFit: null }, ...bars] : bars;
}

function nothingIn(range: BarRange | undefined): ReedplateError {
  return new ReedplateError({
    code: 'NUMBER_RANGE',
    value: range?.join(' to '),
    expected: 'bars that were judged',
  });
}

/** A note cut at the lines of bars. */
function piecesOf(
  note: NoteScore,
  pickup: number,
  barTicks: number,
): readonly (readonly [bar: number, piece: BarNote])[] {
  const from = (note.start - pickup) / barTicks;
  const to = (note.start + note.duration - pickup) / barTicks;
  const pieces: [number, BarNote][] = [];
  for (let bar = Math.floor(from); bar < to; bar += 1) {
    const isStruck = pieces.length === 0 && !note.held;
    const piece = { note, from: Math.max(0, from - bar), to: Math.min(1, to - bar), isStruck };
    pieces.push([bar + 1, piece]);
  }
  return pieces;
}
