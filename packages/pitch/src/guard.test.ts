import { describe, expect, test } from 'vitest';
import { ReedplateError } from './error.js';
import { requireInteger, requireOneOf, requirePositive, requireSome } from './guard.js';

const withCode = (code: string) => expect.objectContaining({ name: 'ReedplateError', code });

describe('requireInteger', () => {
  const hole = { min: 1, max: 10, what: 'a hole' };

  test('returns whole numbers within bounds, the bounds themselves too', () => {
    expect([1, 5, 10].map((value) => requireInteger(value, hole))).toEqual([1, 5, 10]);
  });

  test.each([
    [0],
    [11],
    [1.5],
    [Number.NaN],
    [Number.POSITIVE_INFINITY],
    ['5'],
    [null],
    [undefined],
    [5n],
    [[5]],
  ])('refuses %s', (value) => {
    expect(() => requireInteger(value, hole)).toThrow(withCode('NUMBER_RANGE'));
  });

  test('takes any safe integer where a bound is left out', () => {
    const { MIN_SAFE_INTEGER, MAX_SAFE_INTEGER } = Number;
    expect(requireInteger(MAX_SAFE_INTEGER, { min: 0, what: 'a tick' })).toBe(MAX_SAFE_INTEGER);
    expect(requireInteger(MIN_SAFE_INTEGER, { what: 'semitones' })).toBe(MIN_SAFE_INTEGER);
    expect(() => requireInteger(2 ** 53, { what: 'semitones' })).toThrow(withCode('NUMBER_RANGE'));
  });

  test('returns a plain zero for a negative one, which JSON has not', () => {
    expect(Object.is(requireInteger(-0, { what: 'semitones' }), 0)).toBe(true);
  });

  test.each([
    [{ min: 1, max: 10 }, 'a hole, a whole number from 1 to 10'],
    [{ min: 1 }, 'a hole, a whole number from 1 up'],
    [{ max: 10 }, 'a hole, a whole number up to 10'],
    [{}, 'a hole, a whole number'],
  ])('says the bounds %j in the error', (bounds, expected) => {
    expect(() => requireInteger('x', { ...bounds, what: 'a hole' })).toThrow(
      expect.objectContaining({ expected }),
    );
  });

  test.each([
    [11, '10'],
    [-3, '1'],
    [2.4, '2'],
    [Number.POSITIVE_INFINITY, '10'],
    [Number.NaN, undefined],
    ['3', undefined],
  ])('names the nearest number within bounds to %s', (value, nearest) => {
    expect(() => requireInteger(value, { min: 1, max: 10, what: 'a hole' })).toThrow(
      expect.objectContaining({ nearest }),
    );
  });

  test('throws the code and the place it is told', () => {
    const told = { ...hole, code: 'HOLE_RANGE', where: { bar: 2 } } as const;
    expect(() => requireInteger(11, told)).toThrow(
      expect.objectContaining({ code: 'HOLE_RANGE', value: 11, where: { bar: 2 } }),
    );
  });
});

describe('requirePositive', () => {
  const hertz = { what: 'a frequency in Hz' };

  test('returns finite numbers above zero', () => {
    expect(requirePositive(442.5, hertz)).toBe(442.5);
    expect(requirePositive(Number.MIN_VALUE, hertz)).toBe(Number.MIN_VALUE);
  });

  test.each([[0], [-1], [Number.NaN], [Number.POSITIVE_INFINITY], ['440'], [undefined]])(
    'refuses %s',
    (value) => {
      expect(() => requirePositive(value, hertz)).toThrow(withCode('NUMBER_RANGE'));
    },
  );

  test('includes the largest value allowed, and says it', () => {
    const tempo = { max: 1000, what: 'beats a minute', code: 'LINE_INVALID' } as const;
    expect(requirePositive(1000, tempo)).toBe(1000);
    expect(() => requirePositive(1000.1, tempo)).toThrow(
      expect.objectContaining({
        code: 'LINE_INVALID',
        expected: 'beats a minute, above 0 and at most 1000',
      }),
    );
  });
});

describe('requireOneOf', () => {
  const breaths = ['blow', 'draw'] as const;

  test('returns the choice', () => {
    expect(requireOneOf('draw', breaths, { what: 'a breath' })).toBe('draw');
  });

  test('names the choices, and the nearest to text', () => {
    expect(() => requireOneOf('drow', breaths, { what: 'a breath' })).toThrow(
      new ReedplateError({
        code: 'OPTION_UNKNOWN',
        value: 'drow',
        expected: 'a breath: blow, draw',
        nearest: 'draw',
      }),
    );
  });

  test.each([['Draw'], ['valueOf'], ['__proto__'], [''], [1], [null], [undefined], [['draw']]])(
    'refuses %j',
    (value) => {
      expect(() => requireOneOf(value, breaths, { what: 'a breath' })).toThrow(
        withCode('OPTION_UNKNOWN'),
      );
    },
  );

  test('throws the code and the place it is told', () => {
    const told = { what: 'a field', code: 'LINE_INVALID', where: { path: 'x' } } as const;
    expect(() => requireOneOf('x', breaths, told)).toThrow(
      expect.objectContaining({ code: 'LINE_INVALID', where: { path: 'x' } }),
    );
  });
});

describe('requireSome', () => {
  test('returns a list that holds something, and refuses an empty one', () => {
    expect(requireSome([0], 'a number')).toEqual([0]);
    expect(() => requireSome([], 'a harp')).toThrow(
      expect.objectContaining({ code: 'LIST_EMPTY', expected: 'at least a harp' }),
    );
  });
});
