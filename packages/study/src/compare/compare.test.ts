import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type StudyResult, studyTune } from '../study.js';
import { makeStudySetup, type StudySpec } from '../study-setup.js';
import { compareCells } from './compare-cells.js';
import { compareStudies } from './compare-studies.js';
import { holmAdjusted } from './holm.js';
import { pairedFigures } from './paired.js';
import { wilsonInterval } from './wilson.js';

describe('wilsonInterval', () => {
  test('wilsonInterval solves what defines it: the shares whose z of what was found is 1.96', () => {
    const counts = fc
      .integer({ min: 1, max: 500 })
      .chain((count) => fc.tuple(fc.integer({ min: 0, max: count }), fc.constant(count)));
    fc.assert(
      fc.property(counts, ([found, count]) => {
        const [low, high] = wilsonInterval(found, count);
        expect(low).toBeLessThanOrEqual(found / count + 1e-12);
        expect(high).toBeGreaterThanOrEqual(found / count - 1e-12);
        for (const [bound, isEnd] of [
          [low, found === 0],
          [high, found === count],
        ] as const) {
          if (isEnd) continue;
          const z = (found / count - bound) / Math.sqrt((bound * (1 - bound)) / count);
          expect(Math.abs(z)).toBeCloseTo(1.959964, 4);
        }
      }),
    );
  });
});

describe('holmAdjusted', () => {
  // Worked by hand: 4 × 0.005, 3 × 0.01, 2 × 0.03, and 1 × 0.04 raised to what stands before it.
  test('holmAdjusted steps down from the smallest, and never falls', () => {
    const expected = [0.03, 0.06, 0.06, 0.02].map((value) => expect.closeTo(value, 12));
    expect(holmAdjusted([0.01, 0.04, 0.03, 0.005])).toEqual(expected);
    expect(holmAdjusted([])).toEqual([]);
  });

  test('holmAdjusted refuses at any level the very tests that stepping down refuses', () => {
    const chances = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 8 });
    fc.assert(
      fc.property(chances, fc.double({ min: 0.001, max: 0.5, noNaN: true }), (found, level) => {
        const sorted = [...found].sort((a, b) => a - b);
        // Where a bound is met to the last bit, rounding decides.
        fc.pre(sorted.every((each, at) => Math.abs(each * (found.length - at) - level) > 1e-9));
        let refused = 0;
        while (
          refused < sorted.length &&
          (sorted[refused] ?? 1) * (found.length - refused) < level
        ) {
          refused += 1;
        }
        expect(holmAdjusted(found).filter((each) => each < level)).toHaveLength(refused);
      }),
    );
  });
});

const alone = (differences: readonly number[]) =>
  differences.map((difference, at) => ({ difference, family: `${at}` }));
const HOW = { resamples: 4000, seed: 1 };

describe('pairedFigures', () => {
  test('pairedFigures gives mean and effect size as worked by hand', () => {
    // Of 1, 2, 3: mean 2, standard deviation 1; of eight patterns of signs +++ and --- are as large.
    const { value, effectSize, probability } = pairedFigures(alone([1, 2, 3]), HOW);
    expect([value, effectSize]).toEqual([2, 2]);
    expect(probability).toBeCloseTo(2 / 8, 1);
    expect(pairedFigures(alone([1, 1]), HOW).effectSize).toBeNull();
  });

  test('pairedFigures: the chance is near that of listing every pattern of signs', () => {
    const few = fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 2, maxLength: 7 });
    fc.assert(
      fc.property(few, fc.nat({ max: 1000 }), (differences, seed) => {
        const sums = differences.reduce<readonly number[]>(
          (all, each) => all.flatMap((sum) => [sum + each, sum - each]),
          [0],
        );
        const found = Math.abs(differences.reduce((sum, each) => sum + each, 0));
        const exact = sums.filter((sum) => Math.abs(sum) >= found).length / sums.length;
        const { probability } = pairedFigures(alone(differences), { ...HOW, seed });
        // Five standard errors of 4,000 draws.
        expect(Math.abs(probability - exact)).toBeLessThan(0.04);
      }),
      { numRuns: 40 },
    );
  });

  test('pairedFigures turned round has the signs turned, and the same for a seed', () => {
    const one = pairedFigures(alone([1, 4, -2, 3, 0]), HOW);
    const other = pairedFigures(alone([-1, -4, 2, -3, 0]), HOW);
    expect(other.value).toBe(-one.value);
    expect(other.low).toBeCloseTo(-one.high, 1);
    expect(other.probability).toBe(one.probability);
    expect(pairedFigures(alone([1, 4, -2, 3, 0]), HOW)).toEqual(one);
  });

  test('pairedFigures draws a family together: copies of a tune make no interval narrower', () => {
    const differences = [1, 4, -2, 3, 0, 2, 5, -1];
    const single = pairedFigures(alone(differences), HOW);
    const copied = pairedFigures(
      alone(differences).flatMap((pair) => Array.from({ length: 25 }, () => pair)),
      HOW,
    );
    for (const name of ['value', 'low', 'high', 'probability'] as const) {
      expect(copied[name]).toBeCloseTo(single[name], 9);
    }
    const taken = pairedFigures(alone(Array.from({ length: 25 }, () => differences).flat()), HOW);
    expect(taken.high - taken.low).toBeLessThan((copied.high - copied.low) / 3);
  });

  test.each([[[]], [[1]], [[1, 1]]])('pairedFigures refuses one family, as %j of one', (list) => {
    const pairs = list.map((difference) => ({ difference, family: 'one' }));
    expect(() => pairedFigures(pairs, HOW)).toThrow(
      expect.objectContaining({ code: 'STUDY_INVALID' }),
    );
  });
});

const SPEC: StudySpec = { tunings: ['standard', 'raised-third-blow'], positions: [1, 2] };

/** Results of invented tunes around the sixth of the key, which raising the third blow reed gives. */
function results(spec: StudySpec = SPEC, count = 8): readonly StudyResult[] {
  return Array.from({ length: count }, (_, tune) => {
    const notes = [0, 4, 7, 9, 7].map((up, at) => ({
      start: at * 480,
      duration: 480,
      pitch: 60 + ((up + tune) % 12),
    }));
    const text = JSON.stringify({ key: 'C', family: `f${tune >> 1}`, line: { notes } });
    return studyTune(text, tune + 1, makeStudySetup(spec)) as StudyResult;
  });
}

describe('compareCells', () => {
  test('compareCells gives for each place the mean difference of the tunes that both play whole', () => {
    const found = compareCells(results());
    expect(found.map(({ first, second, where }) => [first, second, where])).toEqual([
      ['standard', 'raised-third-blow', 'position 1, bends'],
      ['standard', 'raised-third-blow', 'position 2, bends'],
    ]);
    const [first] = found;
    const pairs = results().flatMap(({ cells: [standard, , raised] }) =>
      standard?.playableShare === 1 && raised?.playableShare === 1
        ? [raised.effortPerEvent - standard.effortPerEvent]
        : [],
    );
    expect(first?.tunes).toBe(pairs.length);
    const mean = pairs.reduce((sum, each) => sum + each, 0) / pairs.length;
    expect(first?.difference?.value).toBeCloseTo(mean, 9);
  });

  test('compareCells turned round has the differences turned round, of every part', () => {
    for (const [part, one, other] of [
      ['tuning', 'standard', 'raised-third-blow'],
      ['position', 1, 2],
    ] as const) {
      const there = compareCells(results(), { part, against: one, figure: 'wholeShare' });
      const back = compareCells(results(), { part, against: other, figure: 'wholeShare' });
      expect(back.map(({ difference }) => (difference?.value ?? NaN) + 0)).toEqual(
        there.map(({ difference }) => 0 - (difference?.value ?? NaN)),
      );
      expect(there.every(({ tunes, families }) => tunes === 8 && families === 4)).toBe(true);
    }
  });

  test('compareCells gives no difference for one tune, and says how many there were', () => {
    const [found] = compareCells(results(SPEC, 1), { figure: 'wholeShare' });
    expect(found).toMatchObject({ tunes: 1, families: 1, difference: null });
  });

  test('compareCells corrects for all that is compared in one call', () => {
    for (const { difference } of compareCells(results(), { figure: 'wholeShare' })) {
      const { probability = NaN, corrected = NaN } = difference ?? {};
      expect(corrected).toBeGreaterThanOrEqual(probability);
      expect(corrected).toBeLessThanOrEqual(Math.min(1, 2 * probability));
    }
  });

  test.each([
    [{ against: 'none' }, 'STUDY_INVALID'],
    [{ part: 'level' }, 'STUDY_INVALID'],
    [{ part: 'harp' }, 'OPTION_UNKNOWN'],
    [{ figure: 'effort' }, 'OPTION_UNKNOWN'],
    [{ resamples: 10 }, 'NUMBER_RANGE'],
    [{ levle: 1 }, 'OPTION_UNKNOWN'],
  ])('compareCells refuses %j', (options, code) => {
    expect(() => compareCells(results(), options as object)).toThrow(
      expect.objectContaining({ code }),
    );
  });
});

describe('compareStudies', () => {
  const by = (model: string) => results({ ...SPEC, model });

  test('compareStudies compares two models cell by cell, and the beginner has it harder', () => {
    const found = compareStudies(by('beginner'), by('advanced'));
    expect(found).toHaveLength(4);
    for (const { first, second, difference } of found) {
      expect([first, second]).toEqual(['beginner', 'advanced']);
      if (difference !== null) expect(difference.value).toBeLessThan(0);
    }
    expect(found.some(({ difference }) => difference !== null)).toBe(true);
  });

  test('compareStudies of a study with itself finds no difference at all', () => {
    for (const { difference } of compareStudies(by('beginner'), by('beginner'))) {
      if (difference !== null) {
        expect(difference).toMatchObject({ value: 0, low: 0, high: 0, probability: 1 });
      }
    }
  });

  test.each([
    ['fewer tunes', by('beginner').slice(1)],
    ['other cells', results({ ...SPEC, positions: [1, 3] })],
    ['none', []],
  ])('compareStudies refuses %s', (_, other) => {
    for (const sides of [
      [by('advanced'), other],
      [other, by('advanced')],
    ] as const) {
      expect(() => compareStudies(...sides)).toThrow(
        expect.objectContaining({ code: 'STUDY_INVALID' }),
      );
    }
  });
});
