import { chordChanges, makeChart, parseForm } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { charts } from '../../shared/arbitraries.fixture.js';
import { chartReport } from './report.js';

describe('chartReport', () => {
  test('chartReport numbers the bars from 1 without a gap', () => {
    fc.assert(
      fc.property(charts, (chart) => {
        const { bars } = chartReport(chart);
        expect(bars.map(({ bar }) => bar)).toEqual(
          Array.from({ length: chart.bars }, (_, index) => index + 1),
        );
      }),
    );
  });

  test('chartReport counts choruses from 1, and the introduction as none', () => {
    fc.assert(
      fc.property(charts, (chart) => {
        const choruses = new Set(chartReport(chart).bars.map(({ chorus }) => chorus));
        const first = chart.intro === undefined ? 1 : 0;
        expect([...choruses]).toEqual(
          Array.from({ length: chart.choruses + 1 - first }, (_, index) => first + index),
        );
      }),
    );
  });

  test('chartReport has each chord of the chart once, in order, with its numeral', () => {
    fc.assert(
      fc.property(charts, (chart) => {
        const told = chartReport(chart).bars.flatMap(({ chords }) => chords);
        expect(told).toEqual(
          chart.spans.map(({ beat, numeral, chord }) => {
            return { beat, numeral, chord: chord?.symbol ?? null };
          }),
        );
      }),
    );
  });

  test('chartReport begins every bar with a chord, and stays on the felt beats of the metre', () => {
    fc.assert(
      fc.property(charts, (chart) => {
        const { beatsPerBar } = parseMetre(chart.metre);
        for (const { chords } of chartReport(chart).bars) {
          expect(chords[0]?.beat).toBe(1);
          for (const { beat } of chords) expect(beat).toBeLessThan(beatsPerBar + 1);
        }
      }),
    );
  });

  test('chartReport gives the chart itself beside the bars', () => {
    const chart = makeChart('basic', 'G');
    expect(chartReport(chart).chart).toBe(chart);
  });

  test('chartReport says a break by null', () => {
    const { bars } = chartReport(makeChart(parseForm('I7 N.C. | V7'), 'C'));
    expect(bars[0]?.chords).toEqual([
      { beat: 1, numeral: 'I7', chord: 'C7' },
      { beat: 3, numeral: null, chord: null },
    ]);
  });

  test('chartReport shows a chord in each bar that it lasts, where chordChanges has it once', () => {
    const chart = makeChart('basic', 'G');
    const { bars } = chartReport(chart);
    expect(bars.slice(0, 4).map(({ chords }) => chords.map(({ chord }) => chord))).toEqual([
      ['G7'],
      ['G7'],
      ['G7'],
      ['G7'],
    ]);
    expect(
      chordChanges(chart)
        .slice(0, 2)
        .map(({ bar }) => bar),
    ).toEqual([1, 5]);
  });
});
