import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setColumns } from './table.js';

const cells = fc.stringMatching(/^[a-z0-9#b' +-]{0,9}$/u);

describe('setColumns', () => {
  test('setColumns makes each column as wide as its widest cell', () => {
    expect(setColumns([['bar', 'chord'], ['1', 'G7'], ['12']])).toEqual([
      'bar  chord',
      '1    G7',
      '12',
    ]);
  });

  test('setColumns counts a sign beyond ASCII as one', () => {
    expect(
      setColumns([
        ['♭3', 'x'],
        ['5', 'y'],
      ]),
    ).toEqual(['♭3  x', '5   y']);
  });

  test('setColumns of no rows is no lines', () => {
    expect(setColumns([])).toEqual([]);
  });

  test('setColumns keeps every cell where its column begins, and adds no blank at the end', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(cells, cells, cells), { minLength: 1 }), (rows) => {
        const lines = setColumns(rows);
        const widthOf = (column: 0 | 1) => 2 + Math.max(...rows.map((row) => row[column].length));
        const starts = [0, widthOf(0), widthOf(0) + widthOf(1)];
        for (const [index, line] of lines.entries()) {
          expect(line).toBe(line.trimEnd());
          for (const [column, start] of starts.entries()) {
            const cell = (rows[index]?.[column] ?? '').trimEnd();
            expect(line.slice(start, start + cell.length)).toBe(cell);
          }
        }
      }),
    );
  });

  test('setColumns counts a sign outside the basic plane once', () => {
    expect(
      setColumns([
        ['𝄪', 'a'],
        ['bb', 'b'],
      ]),
    ).toEqual(['𝄪   a', 'bb  b']);
  });
});
