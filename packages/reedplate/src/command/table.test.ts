import { describe, expect, test } from 'vitest';
import { setColumns } from './table.js';

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
});
