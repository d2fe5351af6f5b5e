import fc from 'fast-check';
import { distance } from 'fastest-levenshtein';
import { describe, expect, test } from 'vitest';
import { nearestOf } from './nearest.js';

describe('nearestOf', () => {
  test.each([
    ['quick-chnage', 'quick-change'],
    ['BASIC', 'basic'],
    ['basics', 'basic'],
  ])('finds the choice that %s was meant to be', (text, choice) => {
    expect(nearestOf(text, ['basic', 'quick-change'])).toBe(choice);
  });

  test('finds nothing where more than half would have to change', () => {
    expect(nearestOf('zzz', ['basic', 'quick-change'])).toBeUndefined();
    expect(nearestOf('q', ['c'])).toBeUndefined();
    expect(nearestOf('', ['c'])).toBeUndefined();
    expect(nearestOf('ab', ['ac'])).toBe('ac');
  });

  test('takes the earlier choice on a tie', () => {
    expect(nearestOf('bat', ['cat', 'hat'])).toBe('cat');
    expect(nearestOf('bat', ['hat', 'cat'])).toBe('hat');
  });

  test('does not measure text too long to be a slip', () => {
    expect(nearestOf('a'.repeat(64), ['a'.repeat(63)])).toBe('a'.repeat(63));
    expect(nearestOf('a'.repeat(65), ['a'.repeat(64)])).toBeUndefined();
  });

  test('has nothing to say without choices', () => {
    expect(nearestOf('a', [])).toBeUndefined();
  });

  test('counts edits as the package fastest-levenshtein does', () => {
    const word = fc.string({ unit: fc.constantFrom(...'abcd'), minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(word, fc.array(word, { minLength: 1, maxLength: 6 }), (wanted, choices) => {
        const edits = choices.map((choice) => distance(wanted, choice));
        const isNear = (choice: string, at: number): boolean =>
          (edits[at] ?? 0) <= Math.max(wanted.length, choice.length) / 2;
        const near = edits.filter((_, at) => isNear(choices[at] ?? '', at));
        const nearest = choices.find(
          (choice, at) => isNear(choice, at) && edits[at] === Math.min(...near),
        );
        expect(nearestOf(wanted, choices)).toBe(nearest);
      }),
    );
  });
});
