import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { chartEnd, chordAt, chordAtBeat } from './chord-at.js';
import { makeChart } from './make-chart.js';

const chart = makeChart('jazz', 'F', { pickup: 960, choruses: 2 });

describe('chordAt', () => {
  test('chordAt finds the chord from its first tick to its last', () => {
    expect(chordAt(chart, 960)?.chord?.symbol).toBe('F7');
    expect(chordAt(chart, 4799)?.chord?.symbol).toBe('F7');
    expect(chordAt(chart, 4800)?.chord?.symbol).toBe('Bb7');
  });

  test('chordAt finds no chord in the pickup', () => {
    expect(chordAt(chart, 959)).toBeUndefined();
  });

  test.each([-1, 0.5, Number.NaN, chartEnd(chart)])('chordAt refuses tick %d', (tick) => {
    expect(() => chordAt(chart, tick)).toThrow(expect.objectContaining({ code: 'NUMBER_RANGE' }));
  });

  test('chordAt agrees with a search through all spans, at any tick of any form', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...FORMS),
        fc.nat(),
        fc.integer({ min: 1, max: 5 }),
        (form, seed, choruses) => {
          const some = makeChart(form, 'D', { choruses });
          const tick = seed % chartEnd(some);
          const found = some.spans.find(({ start, end }) => start <= tick && tick < end);
          expect(chordAt(some, tick)).toBe(found);
        },
      ),
    );
  });
});

describe('chordAtBeat', () => {
  test('chordAtBeat finds the chord at a bar and beat', () => {
    expect(chordAtBeat(chart, { bar: 11, beat: 1 })?.numeral).toBe('I7');
    expect(chordAtBeat(chart, { bar: 11, beat: 3 })?.numeral).toBe('V7/ii');
    expect(chordAtBeat(chart, { bar: 24, beat: 4.5 })?.numeral).toBe('V7');
  });

  test('chordAtBeat finds no chord in the pickup, which is bar 0', () => {
    expect(chordAtBeat(chart, { bar: 0, beat: 4 })).toBeUndefined();
  });

  test.each([
    { bar: 25, beat: 1 },
    { bar: 0, beat: 1 },
  ])('chordAtBeat refuses %j', (place) => {
    expect(() => chordAtBeat(chart, place)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE', where: place }),
    );
  });
});
