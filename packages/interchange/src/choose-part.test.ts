import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { choosePart } from './choose-part.js';
import type { PiecePart } from './piece.js';

const part = (name: string): PiecePart => ({ name, line: makeLine([]) });
const parts = [part('Lead'), part(''), part('Bass'), part('Lead')];
const never = (): undefined => undefined;

describe('choosePart', () => {
  test('choosePart takes a part by number from 1, or by name, the first of a name', () => {
    expect(choosePart(parts, 2, never)).toBe(parts[1]);
    expect(choosePart(parts, 'Bass', never)).toBe(parts[2]);
    expect(choosePart(parts, 'Lead', never)).toBe(parts[0]);
  });

  test('choosePart leaves the choice to the reader where none is asked for', () => {
    expect(choosePart(parts, undefined, (all) => all.at(-1))).toBe(parts[3]);
    expect(choosePart([], undefined, ([first]) => first)).toBeUndefined();
  });

  test.each([0, 5, -1, 1.5, 'Drums', 'toString', ''.padEnd(3)])(
    'choosePart refuses %j and lists the parts there are',
    (wanted) => {
      expect(() => choosePart(parts, wanted, never)).toThrowError(
        expect.objectContaining({
          code: 'OPTION_UNKNOWN',
          value: wanted,
          expected: 'the number or name of a part: 1 (Lead), 2, 3 (Bass), 4 (Lead)',
        }),
      );
    },
  );

  test('choosePart says where there is no part at all', () => {
    expect(() => choosePart([], 1, never)).toThrowError(/there is none with notes/u);
  });
});
