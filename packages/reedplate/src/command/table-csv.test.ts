import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { setCsv } from './csv.js';
import { examples } from './examples.js';
import { setColumns } from './table.js';

const cells = fc.stringMatching(/^[a-z0-9#b' +-]{0,9}$/u);

describe('setColumns', () => {
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

describe('setCsv', () => {
  test('setCsv heads the columns by the fields, and quotes what holds commas or quotes', () => {
    expect(setCsv([{ name: 'low F, "old"', bends: 2 }])).toBe('name,bends\n"low F, ""old""",2\n');
  });

  test('setCsv writes a row a record, whatever they hold', () => {
    fc.assert(
      fc.property(fc.array(fc.record({ a: cells, b: fc.integer() }), { minLength: 1 }), (rows) => {
        expect(setCsv(rows).trimEnd().split('\n')).toHaveLength(rows.length + 1);
      }),
    );
  });
});

describe('examples', () => {
  test('examples says one example or several', () => {
    expect(examples('reedplate forms')).toBe('\nExample:\n  reedplate forms');
    expect(examples('a', 'b')).toBe('\nExamples:\n  a\n  b');
  });
});
