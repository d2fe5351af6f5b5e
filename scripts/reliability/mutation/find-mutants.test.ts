import { describe, expect, test } from 'vitest';
import { findMutants } from './find-mutants.js';

const changed = (text: string): readonly string[] =>
  findMutants('x.ts', text).map(
    ({ from, to, text: instead }) => text.slice(0, from) + instead + text.slice(to),
  );

describe('findMutants', () => {
  test.each([
    ['const a = b + c;', ['const a = b - c;']],
    ['const a = b < c;', ['const a = b <= c;', 'const a = b >= c;']],
    ['const a = b && !c;', ['const a = b || !c;', 'const a = b && c;']],
    ['const a = b ? c : d;', ['const a = true ? c : d;', 'const a = false ? c : d;']],
    ['const a = b.every(c);', ['const a = b.some(c);']],
    ['const a = 3;', ['const a = 4;']],
    ['push(a);', [';']],
  ])('findMutants changes %s', (text, expected) => {
    expect(changed(text)).toEqual(expected);
  });

  test.each([
    'import { a } from "b";',
    'interface A { readonly b: 1 }',
    'type A = 1 | 2;',
    'throw new Error(a + b);',
    'const a: 1 = b;',
    'const a = { b: 1 };',
    'const a: OptionNames<B> = { b: true };',
  ])('findMutants leaves %s alone', (text) => {
    expect(changed(text)).toEqual([]);
  });

  test('findMutants says on which line', () => {
    expect(findMutants('x.ts', 'a();\nb();\n').map(({ line }) => line)).toEqual([1, 2]);
  });
});
