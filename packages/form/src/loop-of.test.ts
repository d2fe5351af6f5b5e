import { foldTick, secondsAt, tickAtSeconds } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { chartEnd, chordAt } from './chord-at.js';
import { loopOf } from './loop-of.js';
import { makeChart } from './make-chart.js';
import type { Chart } from './types.js';

const BASIC = makeChart(FORMS[0] as (typeof FORMS)[number], 'G', {
  tempo: 120,
  choruses: 2,
  pickup: 960,
});

/** The chart with its first bars as an introduction. */
function withIntro(chart: Chart, bars: number): Chart {
  const spans = chart.spans.map((span) => (span.bar <= bars ? { ...span, chorus: 0 } : span));
  return { ...chart, intro: bars, spans };
}

describe('loopOf', () => {
  test('is all choruses, without the pickup', () => {
    expect(loopOf(BASIC)).toEqual({ start: 960, end: chartEnd(BASIC) });
    expect(Object.isFrozen(loopOf(BASIC))).toBe(true);
  });

  test('leaves the introduction out', () => {
    expect(loopOf(withIntro(BASIC, 4)).start).toBe(960 + 4 * 3840);
  });

  test('says for every second, however late, which chord sounds: that of so many choruses before', () => {
    fc.assert(
      fc.property(fc.constantFrom(...FORMS), fc.nat(1000), fc.nat(5), (form, seconds, choruses) => {
        const chart = makeChart(form, 'G', { tempo: 110, choruses: choruses + 1 });
        const loop = loopOf(chart);
        const tick = tickAtSeconds(seconds, chart, { loop });
        const { tick: written, pass } = foldTick(tick, loop);
        const pastPasses = (pass - 1) * secondsAt(loop.end, chart);
        expect(secondsAt(written, chart) + pastPasses).toBeCloseTo(seconds, 2);
        expect(chordAt(chart, written)).toBeDefined();
      }),
    );
  });
});
