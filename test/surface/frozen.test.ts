import { describe, expect, test } from 'vitest';
import { CALLS } from './calls.fixture.js';
import * as everything from './everything.fixture.js';

const EXPORTS: ReadonlyMap<string, unknown> = new Map(Object.entries(everything));

/** Writers of bytes give what any API takes, and none of them takes frozen bytes. */
const isBytes = (value: unknown): boolean => ArrayBuffer.isView(value);

/** Where something can still be written to, by its path. */
function looseIn(value: unknown, path = ''): readonly string[] {
  if (typeof value !== 'object' || value === null || isBytes(value)) return [];
  if (!Object.isFrozen(value)) return [path === '' ? 'the result' : path];
  return Object.entries(value).flatMap(([field, held]) => looseIn(held, `${path}.${field}`));
}

describe('what a function gives', () => {
  test.each(Object.entries(CALLS))('%s is frozen, with all that it holds', async (name, given) => {
    const call = EXPORTS.get(name) as (...given: readonly unknown[]) => unknown;
    expect(looseIn(await call(...given)).slice(0, 3)).toEqual([]);
  });
});
