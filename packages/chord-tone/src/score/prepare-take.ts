import type { Chart } from '@reedplate/form';
import type { Line } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import type { PlayingStyle } from '../styles.js';
import { type AlignOptions, alignLine, requireCountIn } from './align.js';
import { takeInGraces } from './graces.js';
import { compileChart, type ScoringGrid } from './grid.js';
import { cropChart, layTake } from './lay-take.js';
import { type Placed, placeNotes } from './place-notes.js';
import type { TakeAlignment } from './score-types.js';
import { type Heard, hearNotes, moveEarlier } from './sounded.js';

/** How a take is laid on its chart. */
export interface LayOptions extends AlignOptions {
  /** First and last bar of the chart to judge, from 1; default all. */
  readonly bars?: readonly [number, number];
}

/** A take laid on its chart, note by note. */
export interface PreparedTake {
  /** The chart as often as it is played, with chords in the bars that are judged. */
  readonly chart: Chart;
  readonly grid: ScoringGrid;
  /** The same with chords in all bars. */
  readonly whole: ScoringGrid;
  readonly notes: readonly Placed[];
  /** How many notes were heard that the chart ought to judge; 0 where only some bars are asked for. */
  readonly heard: number;
  readonly alignment: TakeAlignment;
}

/** Hears the notes of a line, takes off count-in and latency, and lays them on the chart. */
export function prepareTake(
  line: Line,
  chart: Chart,
  style: PlayingStyle,
  options: LayOptions & { readonly pushWithin: number },
): PreparedTake {
  const given = compileChart(chart, style);
  const countIn = requireCountIn(options.countIn ?? line.countIn ?? 0);
  const moved = chart.pickup - line.pickup - countIn * given.barTicks;
  const heard = takeInGraces(hearNotes(line, moved), given);
  const { latency, swing } = alignLine(heard, given, options, line.tempo ?? chart.tempo);
  const laid = layTake(chart, moveEarlier(heard, latency));
  const whole = laid.chart === chart ? given : compileChart(laid.chart, style);
  const cropped = cropChart(laid.chart, options.bars);
  const grid = options.bars === undefined ? whole : compileChart(cropped, style);
  const notes = notesWithin(laid.notes, grid, options.bars && options.pushWithin);
  return {
    chart: cropped,
    grid,
    whole,
    notes: placeNotes(notes, grid, swing),
    heard: options.bars === undefined ? heard.length : 0,
    alignment: Object.freeze({ latency, swing, countIn, choruses: laid.chart.choruses }),
  };
}

/** The notes that sound within the chart, or in the bars asked for and just before. */
function notesWithin(
  notes: readonly Heard[],
  { changes, end: chartEnd, beatTicks }: ScoringGrid,
  pushWithin: number | undefined,
): readonly Heard[] {
  if (pushWithin === undefined) {
    return notes.filter(({ start, end }) => end > 0 && start < chartEnd);
  }
  const withChord = changes.filter(({ table }) => table.chord !== null);
  // Bars without a chord leave nothing to judge.
  if (withChord.length === 0) return [];
  const from = itemAt(withChord, 0).start - pushWithin * beatTicks;
  const to = itemAt(withChord, -1).end;
  return notes.filter(({ start, end }) => end > from && start < to);
}
