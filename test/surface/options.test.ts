import { isReedplateError } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { CALLS, type FunctionName } from './calls.fixture.js';
import * as reedplate from './everything.fixture.js';
import { functionsOf } from './functions.fixture.js';

const EXPORTS: ReadonlyMap<string, unknown> = new Map(Object.entries(reedplate));

const functions = functionsOf('test/surface/everything.fixture.ts');
/** What a function does with these options after a right call of it. */
async function answerTo(name: FunctionName, at: number, options: unknown): Promise<unknown> {
  const call = EXPORTS.get(name) as (...given: readonly unknown[]) => unknown;
  const given: unknown[] = [...(CALLS[name] ?? [])];
  given[at] = options;
  try {
    return await call(...given);
  } catch (error) {
    return error;
  }
}

const cases = functions.flatMap(({ name, parameters }) => {
  const at = parameters.findIndex(({ isOptions }) => isOptions);
  return at === -1 ? [] : [{ name: name as FunctionName, at }];
});

describe('the options of every function', () => {
  test('are found by the compiler, and each function has a right call to try them on', () => {
    expect(cases.length).toBeGreaterThan(60);
    expect(cases.map(({ name }) => name).filter((name) => CALLS[name] === undefined)).toEqual([]);
  });

  test.each(cases)('$name refuses an option that there is not, and names it', async (found) => {
    const { name, at } = found;
    const error = await answerTo(name, at, { ...Object(CALLS[name]?.[at]), zzz: 1 });
    expect(isReedplateError(error) ? error.message : error).toMatch(/zzz/u);
  });

  test.each(cases)('$name refuses null, text, a number and a list for options', async (found) => {
    for (const value of [null, 'zzz', 7, []]) {
      const error = await answerTo(found.name, found.at, value);
      expect(isReedplateError(error) ? error.value : error).toBe(value);
    }
  });

  test.each(cases)('$name takes its right call', async ({ name, at }) => {
    expect(await answerTo(name, at, CALLS[name]?.[at])).not.toBeInstanceOf(Error);
  });
});
