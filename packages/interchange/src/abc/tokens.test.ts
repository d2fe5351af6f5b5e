import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { tokenise } from './tokens.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const kinds = (text: string): string =>
  tokenise(text)
    .filter(({ kind }) => kind !== 'space')
    .map(({ kind }) => kind)
    .join(' ');

describe('tokenise', () => {
  test.each([
    ["^c'3/2 _B, =A/ G", 'note note note note'],
    ['z2 x Z4', 'rest rest bar-rest'],
    ['[CEG]2 [C2E2]', 'chord chord'],
    ['| || |] [| |: :| :: |:: ::|', 'bar bar bar bar bar bar bar bar bar'],
    ['|1 A :|2 B [3 C', 'bar ending note bar ending note ending note'],
    ['|1,3 A :|2-4 B', 'bar ending note bar ending note'],
    ['"G7"A "_under"B', 'quoted note quoted note'],
    ['{g}A {/ab}B', 'grace note grace note'],
    [
      '!trill!A +fine+B ~C .D TE',
      'ornament note ornament note ornament note ornament note ornament note',
    ],
    ['(3ABC (3:2:2A2B', 'tuplet note note note tuplet note note'],
    ['(AB)', 'slur note note slur'],
    ['A>B C<<D', 'note broken note note broken note'],
    ['A-A', 'note tie note'],
    ['A & B', 'note overlay note'],
    ['[K:G]A [V:2]B', 'field note field note'],
    ['A y B \\', 'note note'],
    ['$ ? ;', 'unknown unknown unknown'],
  ])('tokenise takes %j apart', (text, expected) => {
    expect(kinds(text)).toBe(expected);
  });

  test('tokenise says the column of each sign, from 1', () => {
    expect(tokenise('AB|[CE]').map(({ text, column }) => [text, column])).toEqual([
      ['A', 1],
      ['B', 2],
      ['|', 3],
      ['[CE]', 4],
    ]);
  });

  test('tokenise leaves nothing out: its signs make the line again', () => {
    const signs = fc.string({ unit: fc.constantFrom(...'abCD^_=|:[]()<>-/123{}"!.zZ& ~\\,\'') });
    fc.assert(
      fc.property(fc.oneof(signs, fc.string({ unit: 'binary', maxLength: 60 })), (text) => {
        const tokens = tokenise(text);
        expect(tokens.map((token) => token.text).join('')).toBe(text);
        let next = 1;
        const columns = tokens.map((token) => {
          const column = next;
          next += token.text.length;
          return column;
        });
        expect(tokens.map(({ column }) => column)).toEqual(columns);
      }),
      { numRuns: 500 },
    );
  });
});
