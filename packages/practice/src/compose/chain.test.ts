import { randomFrom } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Chain, countChains, drawChain, layDraws, type Rule } from './chain.js';

/** Every chain of options, told one by one. */
function everyChain({ options }: Chain): readonly (readonly number[])[] {
  return options.reduce<readonly (readonly number[])[]>(
    (chains, size) =>
      chains.flatMap((chain) => Array.from({ length: size }, (_, option) => [...chain, option])),
    [[]],
  );
}

/** Product of a chain's weights; 0 where a rule is broken. */
function weightOf({ weight, rules }: Chain, options: readonly number[]): number {
  let product = 1;
  for (const [place, option] of options.entries()) {
    product *= weight(place, options[place - 1] ?? -1, option);
  }
  const keeps = rules.every((rule) => {
    let state: number | undefined = rule.start;
    for (const [place, option] of options.entries()) {
      if (state === undefined) return false;
      state = rule.next(state, place, option, options[place - 1] ?? -1);
    }
    return state !== undefined && rule.ends(state);
  });
  return keeps ? product : 0;
}

/** So many times an option, no more and no fewer. */
const exactly = (times: number, wanted: number): Rule => ({
  states: times + 1,
  start: 0,
  next: (state, _, option) => {
    const count = state + (option === wanted ? 1 : 0);
    return count > times ? undefined : count;
  },
  ends: (state) => state === times,
});

const chain = fc
  .record({
    options: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 5 }),
    table: fc.array(fc.nat(3), { minLength: 20, maxLength: 20 }),
    times: fc.nat(2),
  })
  .map(({ options, table, times }): Chain => {
    const weight: Chain['weight'] = (place, before, option) =>
      table[(7 * place + 5 * (before + 1) + option) % table.length] ?? 0;
    return { options, weight, rules: [exactly(times, 1)] };
  });

describe('layDraws', () => {
  test('countChains counts what telling every chain one by one counts', () => {
    fc.assert(
      fc.property(chain, (any) => {
        const expected = everyChain(any).filter((options) => weightOf(any, options) > 0).length;
        const draws = layDraws(any);
        expect(draws === undefined ? 0 : countChains(draws, any.rules)).toBe(expected);
      }),
    );
  });

  test('drawChain draws only chains that keep the rules', () => {
    fc.assert(
      fc.property(chain, fc.integer(), (any, seed) => {
        const draws = layDraws(any);
        if (draws === undefined) return;
        expect(weightOf(any, drawChain(draws, randomFrom(seed)))).toBeGreaterThan(0);
      }),
    );
  });

  test('a melody of 8 notes on 7 degrees, leaps and ends bound, two thirds: as many as told one by one', () => {
    // The ends are the tonic, and no leap is wider than four degrees.
    const melody: Chain = {
      options: Array.from({ length: 8 }, () => 7),
      weight: (place, before, option) => {
        if ((place === 0 || place === 7) && option !== 0) return 0;
        return before === -1 || Math.abs(option - before) <= 4 ? 1 : 0;
      },
      rules: [exactly(2, 2)],
    };
    const draws = layDraws(melody);
    const told = tell(melody);
    expect(told).toBeGreaterThan(1000);
    expect(draws === undefined ? 0 : countChains(draws, melody.rules)).toBe(told);
  });

  /** Counts by going down every way: shares nothing with the layers. */
  function tell({ options, weight }: Chain): number {
    const go = (place: number, before: number, thirds: number): number => {
      if (place === options.length) return Number(thirds === 2);
      const degrees = Array.from({ length: options[place] ?? 0 }, (_, option) => option);
      return degrees
        .filter((option) => weight(place, before, option) > 0)
        .reduce((count, option) => count + go(place + 1, option, thirds + Number(option === 2)), 0);
    };
    return go(0, -1, 0);
  }

  test('draws follow the model: chi-square over 6,000 draws stays under the bound of 0.1 %', () => {
    const small: Chain = {
      options: [3, 3, 3],
      weight: (place, before, option) => 1 + ((place + 2 * before + 3 * option + 9) % 4),
      rules: [exactly(1, 1)],
    };
    const chains = everyChain(small).filter((options) => weightOf(small, options) > 0);
    const total = chains.reduce((sum, options) => sum + weightOf(small, options), 0);
    const draws = layDraws(small);
    if (draws === undefined) throw new Error('it can be drawn');
    const random = randomFrom(2026);
    const counts = new Map<string, number>();
    const times = 6000;
    for (let time = 0; time < times; time += 1) {
      const name = drawChain(draws, random).join();
      counts.set(name, (counts.get(name) ?? 0) + 1);
    }
    const chiSquare = chains.reduce((sum, options) => {
      const expected = (times * weightOf(small, options)) / total;
      return sum + ((counts.get(options.join()) ?? 0) - expected) ** 2 / expected;
    }, 0);
    expect(chains).toHaveLength(12);
    expect([...counts.keys()].every((name) => chains.some((each) => each.join() === name))).toBe(
      true,
    );
    // The 99.9th percentile of chi-square at 11 degrees of freedom. NIST/SEMATECH e-Handbook of
    // Statistical Methods, section 1.3.6.7.4, Critical values of the chi-square distribution.
    expect(chiSquare).toBeLessThan(31.264);
  });

  test('is undefined where no chain keeps the rules', () => {
    expect(layDraws({ options: [2, 2], weight: () => 1, rules: [exactly(3, 1)] })).toBeUndefined();
    expect(layDraws({ options: [2], weight: () => 0, rules: [] })).toBeUndefined();
  });

  test('long chains of small weights stay within numbers', () => {
    const draws = layDraws({
      options: Array.from({ length: 2000 }, () => 2),
      weight: () => 1e-3,
      rules: [],
    });
    if (draws === undefined) throw new Error('it can be drawn');
    expect(drawChain(draws, randomFrom(1))).toHaveLength(2000);
  });
});
