import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemAt } from './item-at.js';

describe('itemAt', () => {
  test('itemAt gives what at() gives, wherever there is something', () => {
    const lists = fc.array(fc.integer(), { minLength: 1, maxLength: 9 });
    fc.assert(
      fc.property(lists, fc.nat(), fc.boolean(), (list, number, fromEnd) => {
        const place = fromEnd ? -1 - (number % list.length) : number % list.length;
        expect(itemAt(list, place)).toBe(list.at(place));
      }),
    );
  });

  test.each([
    [[], 0],
    [['G'], 1],
    [['G'], -2],
    [['G'], 0.5],
  ])('itemAt of %j refuses place %d', (list, place) => {
    expect(() => itemAt(list, place)).toThrowError(
      new RangeError(`a list of ${list.length} has no item ${place}`),
    );
  });
});
