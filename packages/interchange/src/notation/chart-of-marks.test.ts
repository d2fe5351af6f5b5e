import { FORMS, makeChart } from '@reedplate/form';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { makeWarningList } from '../warning.js';
import { type ChartFrame, chartOfMarks } from './chart-of-marks.js';
import type { ChordMark } from './lay-measures.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const FRAME: ChartFrame = { form: 'sheet', key: 'G', metre: '4/4', pickup: 0, end: 4 * 3840 };

function chartOf(marks: readonly ChordMark[], frame: Partial<ChartFrame> = {}) {
  const warnings = makeWarningList();
  const chart = chartOfMarks(marks, { ...FRAME, ...frame }, warnings);
  return { chart, warned: warnings.all() };
}

const shown = (marks: readonly ChordMark[], frame: Partial<ChartFrame> = {}): string =>
  (chartOf(marks, frame).chart?.spans ?? [])
    .map(({ bar, beat, chord }) => `${bar}:${beat} ${chord?.symbol ?? '-'}`)
    .join(' ');

describe('chartOfMarks', () => {
  test('chartOfMarks holds each chord until the next, a span a bar at least', () => {
    const marks = [
      { start: 0, text: 'G7' },
      { start: 3840 + 1920, text: 'C7' },
    ];
    expect(shown(marks)).toBe('1:1 G7 2:1 G7 2:3 C7 3:1 C7 4:1 C7');
  });

  test('chartOfMarks has no chord before the first, and none where N.C. says so', () => {
    const marks = [
      { start: 3840, text: 'G7' },
      { start: 2 * 3840, text: 'N.C.' },
      { start: 3 * 3840, text: 'C' },
    ];
    expect(shown(marks)).toBe('1:1 - 2:1 G7 3:1 - 4:1 C');
    for (const text of ['NC', 'n.c.', 'N. C.']) {
      expect(
        shown(
          [
            { start: 0, text: 'G' },
            { start: 3840, text },
          ],
          { end: 7680 },
        ),
      ).toBe('1:1 G 2:1 -');
    }
  });

  test('chartOfMarks lets the last chord of a pickup sound from bar 1 on', () => {
    const marks = [
      { start: 0, text: 'D7' },
      { start: 480, text: 'G7' },
    ];
    expect(shown(marks, { pickup: 960, end: 960 + 3840 })).toBe('1:1 G7');
    expect(shown([...marks, { start: 960, text: 'C' }], { pickup: 960, end: 4800 })).toBe('1:1 C');
  });

  test('chartOfMarks reads a bass in lower case, and with a plus for a sharp', () => {
    expect(shown([{ start: 0, text: 'G7/b' }], { end: 3840 })).toBe('1:1 G7/B');
    expect(shown([{ start: 0, text: 'D/f+' }], { end: 3840 })).toBe('1:1 D/F#');
  });

  test('chartOfMarks passes over what is no chord, and the second of two at one place', () => {
    const { warned } = chartOf([
      { start: 0, text: 'G7' },
      { start: 0, text: 'E7' },
      { start: 960, text: 'H' },
      { start: 1920, text: 'H' },
    ]);
    expect(warned).toMatchObject([
      { code: 'chord-alternative', value: 'E7', count: 1 },
      { code: 'chord-unknown', value: 'H', count: 2 },
    ]);
  });

  test('chartOfMarks of no chord is no chart', () => {
    expect(chartOf([]).chart).toBeUndefined();
    expect(chartOf([{ start: 0, text: '?' }]).chart).toBeUndefined();
  });

  test('chartOfMarks names numerals in the key, and keeps tempo and feel', () => {
    const { chart } = chartOf([{ start: 0, text: 'C7' }], { tempo: 90, feel: 'shuffle' });
    expect(chart).toMatchObject({ form: 'sheet', key: 'G', tempo: 90, feel: 'shuffle', bars: 4 });
    expect(chart?.spans[0]?.numeral).toBe('IV7');
  });

  test('chartOfMarks bounds a chart of years at 10,000 bars, and says so', () => {
    const marks = Array.from({ length: 600 }, (_, at) => ({ start: at * 3840, text: 'G' }));
    const { chart, warned } = chartOf(marks, { end: 20_000 * 3840 });
    expect(chart?.bars).toBe(10_000);
    expect(warned).toMatchObject([{ code: 'data-malformed', value: '20000 bars' }]);
  });

  test('chartOfMarks bounds a chart of one chord at a thousand bars, so that a small file stays small', () => {
    const barsFor = (bars: number): unknown[] => {
      const { chart, warned } = chartOf([{ start: 0, text: 'G' }], { end: bars * 3840 });
      return [chart?.bars, warned.map(({ code }) => code)];
    };
    expect(barsFor(1016)).toEqual([1016, []]);
    expect(barsFor(1017)).toEqual([1016, ['data-malformed']]);
  });

  test('chartOfMarks gives back the chords of every form, from where they change', () => {
    for (const form of FORMS) {
      const chart = makeChart(form, form.mode === 'minor' ? 'Am' : 'A');
      const marks = chart.spans.map(({ start, chord }) => ({
        start,
        text: chord?.symbol ?? 'N.C.',
      }));
      const end = chart.spans.at(-1)?.end ?? 0;
      const back = chartOf(marks, { key: chart.key, metre: chart.metre, end }).chart;
      expect(
        back?.spans.map(({ start, end: to, chord, bar, beat }) => [start, to, chord, bar, beat]),
      ).toEqual(
        chart.spans.map(({ start, end: to, chord, bar, beat }) => [start, to, chord, bar, beat]),
      );
    }
  });

  test('chartOfMarks fills whole bars without gaps, whatever the marks', () => {
    const marks = fc.array(
      fc.record({
        start: fc.nat({ max: 8 * 3840 }),
        text: fc.constantFrom('G7', 'C', 'N.C.', '?', 'Am7'),
      }),
    );
    fc.assert(
      fc.property(marks, fc.nat({ max: 3839 }), (unsorted, pickup) => {
        const sorted = [...unsorted].sort((a, b) => a.start - b.start);
        const { chart } = chartOf(sorted, { pickup, end: 8 * 3840 });
        let at = pickup;
        for (const { start, end } of chart?.spans ?? []) {
          expect(start).toBe(at);
          expect(end).toBeGreaterThan(start);
          at = end;
        }
        if (chart !== undefined) expect(at).toBe(pickup + chart.bars * 3840);
      }),
    );
  });
});
