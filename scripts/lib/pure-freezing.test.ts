import { transformSync } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { markFreezing } from './pure-freezing.js';

/** What a bundler leaves of a module of which nothing is used. */
function left(source: string): string {
  return transformSync(markFreezing(source), { loader: 'ts', treeShaking: true, format: 'esm' })
    .code;
}

describe('markFreezing', () => {
  it('lets a bundler leave out frozen tables that nothing uses, one in another too', () => {
    expect(left('const WEIGHTS = Object.freeze({ credit: Object.freeze([1, 2]) });')).toBe('');
    expect(left('const ROWS: readonly number[] =\n  Object.freeze([1]);')).toBe('');
  });

  it('leaves statements that freeze, and tables that are used', () => {
    const statement = 'const ROWS = [1];\nObject.freeze(ROWS);';
    expect(markFreezing(statement)).toBe(statement);
    expect(left(statement)).toContain('Object.freeze(ROWS)');
    expect(left('const ROWS = Object.freeze([1]);\nexport { ROWS };')).toContain(
      'Object.freeze([1])',
    );
  });

  it('marks what is returned and handed on', () => {
    const source = 'const f = () => { return Object.freeze([g(Object.freeze({}))]); };';
    expect(markFreezing(source).match(/\/\* @__PURE__ \*\/ Object\.freeze/gu)).toHaveLength(2);
  });
});
