import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cheapestPath } from './connect.js';

const distance = (from: number, to: number): number => Math.abs(to - from);

/** Every way through columns, one choice from each. */
function allPaths(columns: readonly (readonly number[])[]): readonly (readonly number[])[] {
  return columns.reduce<readonly (readonly number[])[]>(
    (paths, column) => paths.flatMap((path) => column.map((choice) => [...path, choice])),
    [[]],
  );
}

function costOf(path: readonly number[]): number {
  return path.reduce(
    (sum, at, index) => sum + (index === 0 ? at % 3 : distance(path[index - 1] ?? 0, at)),
    0,
  );
}

describe('cheapestPath', () => {
  it('cheapestPath costs no more than any other way', () => {
    const columns = fc.array(fc.array(fc.nat(20), { minLength: 1, maxLength: 4 }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(columns, (given) => {
        const path = cheapestPath(given, (at) => at % 3, distance);
        expect(path.length).toBe(given.length);
        expect(costOf(path)).toBe(Math.min(...allPaths(given).map(costOf)));
      }),
    );
  });

  it('cheapestPath decides between equal ways by the first choice in the last column, going back', () => {
    expect(cheapestPath([[4, 6], [5]], () => 0, distance)).toEqual([4, 5]);
    expect(cheapestPath([[5], [6, 4]], () => 0, distance)).toEqual([5, 6]);
    expect(cheapestPath([[1], [0, 2], [1]], () => 0, distance)).toEqual([1, 0, 1]);
  });

  it('cheapestPath through no columns is empty', () => {
    expect(cheapestPath([], () => 0, distance)).toEqual([]);
  });
});
