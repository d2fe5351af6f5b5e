import { makeChart } from '@reedplate/form';
import { describe, expect, it } from 'vitest';
import { layTake } from './lay-take.js';
import { BEAT } from './play.fixture.js';
import type { Heard } from './sounded.js';

const PICKUP = 2 * BEAT;
const BAR = 4 * BEAT;
const CHORUS = 12 * BAR;
const chart = makeChart('basic', 'G', { pickup: PICKUP });
/** A note on the first beat of each of these bars, from 0. */
const onBars = (bars: readonly number[]): readonly Heard[] =>
  bars.map((bar, index) => {
    const start = PICKUP + bar * BAR;
    return { index, pitch: 67, start, end: start + BEAT };
  });
const range = (from: number, to: number) => Array.from({ length: to - from }, (_, at) => from + at);

describe('layTake', () => {
  it('layTake leaves a take of one chorus as it is', () => {
    const notes = onBars(range(0, 12));
    expect(layTake(chart, notes)).toEqual({ chart, notes });
  });

  it('layTake goes round with a take that is longer, up to its last bar', () => {
    const notes = onBars(range(0, 31));
    const laid = layTake(chart, notes);
    expect([laid.chart.bars, laid.chart.choruses]).toEqual([31, 3]);
    expect(laid.notes).toEqual(notes);
    expect(laid.chart.spans.at(-1)).toMatchObject({ chorus: 3, end: PICKUP + 31 * BAR });
  });

  it('layTake ends with the bar of the last onset, wherever in it that lies', () => {
    const notes = onBars(range(0, 31)).map((note) => ({ ...note, start: note.start + BEAT }));
    expect(layTake(chart, notes).chart.bars).toBe(31);
  });

  it('layTake takes empty choruses off before it', () => {
    const early = onBars(range(0, 12));
    const late = early.map((note) => ({
      ...note,
      start: note.start + 2 * CHORUS,
      end: note.end + 2 * CHORUS,
    }));
    expect(layTake(chart, late)).toEqual({ chart, notes: early });
  });

  it('layTake begins with the chorus in which a take begins', () => {
    const laid = layTake(chart, onBars(range(18, 40)));
    expect([laid.chart.bars, laid.notes[0]?.start]).toEqual([28, PICKUP + 6 * BAR]);
  });
});
