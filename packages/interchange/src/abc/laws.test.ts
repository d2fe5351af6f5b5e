import { formById, makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { isReedplateError, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lines, overlappingLines } from '../arbitraries.fixture.js';
import { readAbc } from './read-abc.js';
import { ACCIDENTAL_REACHES } from './voice.js';
import { writeAbc } from './write-abc.js';

// A busy machine takes its time over hundreds of files.
vi.setConfig({ testTimeout: 60_000 });

const keys = fc.constantFrom(...TWELVE_KEYS.map(({ name }) => name), 'Am', 'C#m', 'Bbm');

describe('laws of ABC', () => {
  test.each([1, 40, 60])('readAbc undoes writeAbc for times in units of %i ticks', (unit) => {
    fc.assert(
      fc.property(
        lines({ unit, chords: true }),
        keys,
        fc.constantFrom(...ACCIDENTAL_REACHES),
        (line, key, accidentals) => {
          const [piece] = readAbc(writeAbc({ line, key }), { accidentals });
          expect([piece?.line, piece?.key]).toEqual([line, key]);
        },
      ),
    );
  });

  test.each([240, 320])(
    'readAbc undoes writeAbc for voices that overlap, in units of %i',
    (unit) => {
      fc.assert(
        fc.property(overlappingLines(unit), keys, (line, key) => {
          const [piece] = readAbc(writeAbc({ line, key }));
          expect([piece?.line, piece?.warnings]).toEqual([line, []]);
        }),
      );
    },
  );

  test('readAbc undoes writeAbc for charts of any form', () => {
    for (const id of ['basic', 'quick-change', 'minor'] as const) {
      const form = formById(id);
      const key = form.mode === 'minor' ? 'Cm' : 'Ab';
      const chart = makeChart(form, key, { choruses: 2, tempo: 88 });
      const line = makeLine([{ start: 0, duration: 480, pitch: 60 }], { metre: chart.metre });
      const spans = readAbc(writeAbc({ line, chart }))[0]?.chart?.spans;
      expect(spans?.map(({ start, chord }) => [start, chord])).toEqual(
        chart.spans.map(({ start, chord }) => [start, chord]),
      );
    }
  });

  test('readAbc gives pieces or a typed error for arbitrary text', () => {
    const signs = fc.string({
      unit: fc.constantFrom(...'abcABC^_=|:[]()<>-/1239{}"!.zZ&,\'% \nKLMQVXw$'),
      maxLength: 300,
    });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string({ unit: 'binary' })), (wild) => {
        for (const text of [wild, `X:1\nK:C\n${wild}`]) {
          try {
            expect(readAbc(text).length).toBeGreaterThan(0);
          } catch (error) {
            expect(isReedplateError(error) && error.code).toBe('ABC_SYNTAX');
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});
