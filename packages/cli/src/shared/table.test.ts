import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setColumns, setTable, type Table } from './table.js';
import { widthOf } from './wrap.js';

const heading = (text: string): string => text.toUpperCase();
const set = (table: Table, width = 80) => setTable(table, { width, heading });

const cells = fc
  .array(fc.stringMatching(/^[a-z0-9#']{1,14}$/u), { maxLength: 6 })
  .map((words) => words.join(' '));
const tables = fc.integer({ min: 1, max: 12 }).chain((columns) =>
  fc.record({
    head: fc.array(cells, { minLength: columns, maxLength: columns }),
    rows: fc.array(fc.array(cells, { minLength: columns, maxLength: columns }), {
      maxLength: 8,
    }),
    wrap: fc.constantFrom('cells' as const, 'columns' as const),
  }),
);

describe('setColumns', () => {
  test('setColumns sets each column as wide as its widest cell', () => {
    expect(
      setColumns([
        ['a', 'bb', 'c'],
        ['aaa', 'b', 'c'],
      ]),
    ).toEqual(['a    bb  c', 'aaa  b   c']);
  });

  test('setColumns fills short rows and leaves no trailing blanks', () => {
    expect(setColumns([['a'], ['b', 'c']])).toEqual(['a', 'b  c']);
    expect(setColumns([['a', ''], ['b']])).toEqual(['a', 'b']);
  });

  test('setColumns of nothing is nothing', () => {
    expect(setColumns([])).toEqual([]);
  });

  test('setColumns measures in code points', () => {
    expect(
      setColumns([
        ['♭♭', 'x'],
        ['🎵', 'y'],
      ]),
    ).toEqual(['♭♭  x', '🎵   y']);
  });
});

describe('setTable', () => {
  test('setTable gives no line wider than the width', () => {
    fc.assert(
      fc.property(tables, fc.integer({ min: 40, max: 200 }), (table, width) => {
        for (const line of set(table, width)) expect(widthOf(line)).toBeLessThanOrEqual(width);
      }),
    );
  });

  test('setTable keeps every word of every row', () => {
    fc.assert(
      fc.property(tables, fc.integer({ min: 40, max: 200 }), (table, width) => {
        const text = set(table, width).join('\n');
        const wordsOf = (row: readonly string[]) => row.join(' ').split(' ').filter(Boolean);
        const kept = text.split(/[\s,]+/u);
        for (const word of table.rows.flatMap(wordsOf)) expect(kept).toContain(word);
      }),
    );
  });

  test('setTable that fits is set in columns, its head as a heading', () => {
    expect(set({ head: ['harp', 'key'], rows: [['C', 'G']] })).toEqual(['HARP  KEY', 'C     G']);
  });

  test('setTable without a head has rows alone', () => {
    expect(set({ rows: [['C', 'G']] })).toEqual(['C  G']);
  });

  test('setTable lets long cells go on below, the widest column giving way', () => {
    expect(set({ head: ['bar', 'why'], rows: [['1', 'the only way to play it']] }, 18)).toEqual([
      'BAR  WHY',
      '1    the only way',
      '     to play it',
    ]);
  });

  test('setTable by columns sets as many as fit, then the others, with the first again', () => {
    const table = {
      head: ['hole', '1', '2', '3'],
      rows: [
        ['blow', 'C4 4', 'E4 6', 'G4 1'],
        ['over', '', '', 'B4 3'],
      ],
      wrap: 'columns',
    } as const;
    expect(set(table, 17)).toEqual([
      'HOLE  1     2',
      'blow  C4 4  E4 6',
      '',
      'HOLE  3',
      'blow  G4 1',
      'over  B4 3',
    ]);
  });

  test('setTable without a head lets cells go on below, and without room sets each row alone', () => {
    const rows = [['one', 'a long cell of words'], ['two']];
    expect(setTable({ rows }, { width: 16, heading: (text) => `<${text}>` })).toEqual([
      'one  a long cell',
      '     of words',
      'two',
    ]);
    expect(setTable({ rows }, { width: 6, heading: (text) => `<${text}>` })).toEqual([
      'one, a',
      '  long',
      '  cell',
      '  of',
      '  word',
      '  s',
      'two',
    ]);
  });

  test('setTable of more columns than a screen holds gives each row its own lines', () => {
    const names = Array.from({ length: 20 }, (_, at) => `name${at}`);
    const [first, second] = set({ head: names, rows: [names.map((_, at) => `${at}`)] }, 40);
    expect(first).toBe('name0 0, name1 1, name2 2, name3 3,');
    expect(second).toBe('  name4 4, name5 5, name6 6, name7 7,');
  });
});
