import { readFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { format } from 'node:util';
import * as vitest from 'vitest';

/** A test of a file: its title, with those of the groups around it, and what it does. */
export interface Test {
  readonly title: string;
  readonly run: () => unknown;
}

type Body = (...values: readonly unknown[]) => unknown;

const bodyIn = (words: readonly unknown[]): Body | undefined =>
  words.find((word): word is Body => typeof word === 'function');

/** Rows of a table, as a body takes them. */
const rowsOf = (table: readonly unknown[]): readonly (readonly unknown[])[] =>
  table.map((row) => (Array.isArray(row) ? row : [row]));

/** Compares with a golden file; vitest's own way asks where its test stands. */
function compareWithFiles(folder: () => string): void {
  const { Assertion, util, assert } = vitest.chai;
  util.addMethod(
    Assertion.prototype,
    'toMatchFileSnapshot',
    function (this: { readonly _obj: unknown }, golden: string) {
      assert.equal(this._obj, readFileSync(resolve(folder(), golden), 'utf8'));
    },
  );
}

/**
 * Stands in for vitest in a test file: the same `expect`; tests are kept, and run by whoever asks for them. What a
 * file leaves to be cleaned up is done when the next is taken.
 */
export function makeCollector(): {
  readonly module: unknown;
  readonly take: (file: string, load: () => void) => readonly Test[];
} {
  let tests: Test[] = [];
  let groups: readonly string[] = [];
  let at = '';
  let last: (() => unknown)[] = [];

  const add = (title: unknown, ...words: readonly unknown[]): void => {
    const run = bodyIn(words);
    if (run !== undefined) tests.push({ title: [...groups, String(title)].join(' > '), run });
  };
  const group = (title: unknown, ...words: readonly unknown[]): void => {
    const before = groups;
    groups = [...groups, String(title)];
    bodyIn(words)?.();
    groups = before;
  };
  const withEach = (one: typeof add) =>
    Object.assign(one, {
      each:
        (table: readonly unknown[]) =>
        (title: string, ...words: readonly unknown[]) => {
          const body = bodyIn(words);
          for (const row of rowsOf(table)) one(format(title, ...row), () => body?.(...row));
        },
    });
  compareWithFiles(() => dirname(at));
  const test = withEach(add);
  const describe = withEach(group);
  const none = () => {};
  const vi = { setConfig: none };
  const afterAll = (clean: () => unknown) => last.push(clean);
  const module = { ...vitest, vi, afterAll, test, it: test, describe, __esModule: true };
  return {
    module,
    take(file, load) {
      for (const clean of last) clean();
      last = [];
      tests = [];
      groups = [];
      at = file;
      load();
      return tests;
    },
  };
}
