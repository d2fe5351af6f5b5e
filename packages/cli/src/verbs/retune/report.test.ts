import { makeHarp, RETUNING_CAUTIONS, retuningPlan, TUNINGS } from '@reedplate/layout';
import { midi } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { retuneReport } from './report.js';

const tenHoled = fc
  .constantFrom(...TUNINGS.filter(({ holes }) => holes.length === 10))
  .map((tuning) => makeHarp(tuning.label, { tuning }));

describe('retuneReport', () => {
  test('retuneReport lists the reeds that change and counts the others: twenty in all', () => {
    fc.assert(
      fc.property(tenHoled, tenHoled, (from, to) => {
        const { steps, left } = retuneReport(from, to);
        expect(steps.length + left).toBe(20);
        for (const { remedy } of steps) expect(remedy).not.toBe('leave');
      }),
    );
  });

  test('retuneReport leaves a harp alone that is right already', () => {
    fc.assert(
      fc.property(tenHoled, (harp) => {
        expect(retuneReport(harp, harp)).toMatchObject({ steps: [], left: 20, cautions: [] });
      }),
    );
  });

  test('retuneReport gives cents that lead from one note to the other', () => {
    fc.assert(
      fc.property(tenHoled, tenHoled, (before, after) => {
        for (const { from, to, cents } of retuneReport(before, after).steps) {
          expect(100 * (midi(to) - midi(from))).toBe(cents);
        }
      }),
    );
  });

  test('retuneReport back takes each reed as far the other way', () => {
    fc.assert(
      fc.property(tenHoled, tenHoled, (from, to) => {
        const there = retuneReport(from, to).steps.map(({ hole, breath, cents }) => [
          hole,
          breath,
          cents,
        ]);
        const back = retuneReport(to, from).steps.map(({ hole, breath, cents }) => [
          hole,
          breath,
          -cents,
        ]);
        expect(back).toEqual(there);
      }),
    );
  });

  test('retuneReport warns of what is to be done and of nothing else', () => {
    fc.assert(
      fc.property(tenHoled, tenHoled, fc.integer({ min: 0, max: 400 }), (from, to, mostCents) => {
        const { steps, cautions } = retuneReport(from, to, { mostCents });
        const remedies = new Set(steps.map(({ remedy }) => remedy));
        const expected = RETUNING_CAUTIONS.filter((caution) =>
          caution.remedies.some((remedy) => remedies.has(remedy)),
        );
        expect(cautions).toEqual(expected.map(({ text }) => text));
        expect(cautions).toEqual(retuningPlan(from, to, { mostCents }).cautions);
      }),
    );
  });

  test('retuneReport rounds a change of temperament to a tenth of a cent', () => {
    const C = makeHarp('C');
    const { steps } = retuneReport(C, C, { toTemperament: 'five-limit' });
    expect(steps.length).toBeGreaterThan(5);
    for (const { cents } of steps) expect(cents).toBe(Math.round(cents * 10) / 10);
  });
});
