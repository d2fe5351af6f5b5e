import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { choosePart, findFirst, warnOfChoice } from './choose-part.js';
import { readPiece } from './formats/read-piece.js';
import { sayPartChoice } from './part-choice.js';
import type { PiecePart } from './piece.js';
import { makeWarningList } from './warning.js';

const part = (name: string): PiecePart => ({ name, line: makeLine([]) });
const parts = [part('Lead'), part(''), part('Bass'), part('Lead')];
const never = (): undefined => undefined;

describe('choosePart', () => {
  test('choosePart takes a part by number from 1, or by name, the first of a name', () => {
    expect(choosePart(parts, 2, never)?.part).toBe(parts[1]);
    expect(choosePart(parts, 'Bass', never)?.choice).toEqual({
      part: 3,
      name: 'Bass',
      reasons: ['asked'],
      ties: [],
      doubtful: false,
    });
    expect(choosePart(parts, 'Lead', never)?.part).toBe(parts[0]);
  });

  test('choosePart leaves the choice to the reader where none is asked for', () => {
    const found = { part: 4, reasons: ['range'], ties: [1], doubtful: true } as const;
    expect(choosePart(parts, undefined, () => found)).toEqual({
      part: parts[3],
      choice: { name: 'Lead', ...found },
    });
    expect(choosePart(parts, undefined, findFirst)?.choice.reasons).toEqual(['first']);
    expect(choosePart([part('')], undefined, findFirst)?.choice.reasons).toEqual(['only']);
    expect(choosePart([], undefined, findFirst)).toBeUndefined();
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

describe('warnOfChoice and sayPartChoice', () => {
  const choice = {
    part: 2,
    name: 'Bass',
    reasons: ['single-notes'],
    ties: [3, 5],
    doubtful: true,
  } as const;

  test('warnOfChoice says a doubt and a tie, and nothing of a plain choice', () => {
    const warnings = makeWarningList();
    warnOfChoice({ part: part('Bass'), choice }, warnings);
    expect(warnings.all().map(({ code, value }) => [code, value])).toEqual([
      ['part-doubtful', 'part 2 (Bass)'],
      ['part-tie', '2, 3, 5'],
    ]);
    const none = makeWarningList();
    warnOfChoice({ part: part(''), choice: { ...choice, ties: [], doubtful: false } }, none);
    warnOfChoice(undefined, none);
    expect(none.all()).toEqual([]);
  });

  test('sayPartChoice says part, reasons, ties and doubt in words', () => {
    expect(sayPartChoice(choice)).toBe(
      'part 2 (Bass): it plays one note at a time; as likely: part 3, 5; it does not look like a melody, and no other part does',
    );
    const bare = { part: 1, name: '', reasons: [], ties: [], doubtful: false } as const;
    expect(sayPartChoice(bare)).toBe('part 1: nothing better is there');
  });
});

describe('readPiece', () => {
  test('readPiece refuses a part of a line or of tablature that has but one', () => {
    const line = JSON.stringify(makeLine([{ start: 0, duration: 960, pitch: 60 }]));
    expect(readPiece(line, { part: 1 }).line.notes).toHaveLength(1);
    const refused = expect.objectContaining({ code: 'OPTION_UNKNOWN', value: 2 });
    expect(() => readPiece(line, { part: 2 })).toThrowError(refused);
    expect(() => readPiece('-2:2 -3', { harp: makeHarp('C'), part: 2 })).toThrowError(refused);
  });
});
