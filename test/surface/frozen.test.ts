import { describe, expect, test } from 'vitest';
import { CALLS } from './calls.fixture.js';
import * as everything from './everything.fixture.js';
import { looseIn } from './loose-in.fixture.js';

const EXPORTS: ReadonlyMap<string, unknown> = new Map(Object.entries(everything));

describe('what a function gives', () => {
  test.each(Object.entries(CALLS))('%s is frozen, with all that it holds', async (name, given) => {
    const call = EXPORTS.get(name) as (...given: readonly unknown[]) => unknown;
    expect(looseIn(await call(...given)).slice(0, 3)).toEqual([]);
  });
});
