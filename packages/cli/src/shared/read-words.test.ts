import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readList, readNumber, readWholeNumber } from './read-words.js';

const failure = (code: string, value: unknown) => expect.objectContaining({ code, value });

describe('readWholeNumber', () => {
  const bounds = { min: 1, max: 12, what: 'a position' };

  test('readWholeNumber reads what String writes, within bounds that count', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 12 }), (number) => {
        expect(readWholeNumber(`${number}`, bounds)).toBe(number);
      }),
    );
  });

  test.each(['0', '13'])('readWholeNumber refuses %j, out of bounds', (word) => {
    expect(() => readWholeNumber(word, bounds)).toThrow(failure('NUMBER_RANGE', Number(word)));
  });

  test.each(['', ' 2', '2.0', '1e1', '0x2', 'two', '-1', '+2', '٢', '9'.repeat(16)])(
    'readWholeNumber refuses %j as it was typed',
    (word) => {
      expect(() => readWholeNumber(word, bounds)).toThrow(failure('NUMBER_RANGE', word));
    },
  );

  test('readWholeNumber gives a number within bounds or a typed error for any text', () => {
    fc.assert(
      fc.property(fc.string(), (word) => {
        try {
          expect(readWholeNumber(word, bounds)).toBeGreaterThanOrEqual(1);
        } catch (error) {
          expect(error).toMatchObject({ code: 'NUMBER_RANGE' });
        }
      }),
    );
  });
});

describe('readNumber', () => {
  test.each([
    ['440', 440],
    ['442.5', 442.5],
    ['-12', -12],
    ['0', 0],
    ['007', 7],
  ])('readNumber reads %j', (word, number) => {
    expect(readNumber(word, 'hertz')).toBe(number);
  });

  test.each(['', '.5', '5.', '1,5', '1e3', 'NaN', 'Infinity', '--5', ' 5'])(
    'readNumber refuses %j, and says what was wanted',
    (word) => {
      expect(() => readNumber(word, 'hertz')).toThrow(
        expect.objectContaining({
          code: 'NUMBER_RANGE',
          value: word,
          expected: expect.stringContaining('hertz'),
        }),
      );
    },
  );
});

describe('readList', () => {
  const words = fc.array(fc.stringMatching(/^[a-z][a-z -]{0,8}[a-z]$/u), { minLength: 1 });

  test('readList reads words joined by commas, with blanks around them or not', () => {
    fc.assert(
      fc.property(words, fc.constantFrom(',', ', ', ' ,  '), (list, comma) => {
        expect(readList(list.join(comma))).toEqual(list);
      }),
    );
  });

  test('readList passes over what is empty between commas', () => {
    expect(readList(',C,, low F ,')).toEqual(['C', 'low F']);
  });

  test.each(['', ' ', ',', ' , '])('readList refuses %j, which names nothing', (text) => {
    expect(() => readList(text)).toThrow(failure('LIST_EMPTY', []));
  });
});
