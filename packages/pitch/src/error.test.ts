import { describe, expect, test } from 'vitest';
import { type ErrorDetails, isReedplateError, ReedplateError } from './error.js';
import { ERROR_CODES } from './error-codes.js';

const details: ErrorDetails = { code: 'NOTE_UNKNOWN', value: 'H4', expected: 'a note' };
const messageOf = (more: Partial<ErrorDetails>): string =>
  new ReedplateError({ ...details, ...more }).message;

describe('ReedplateError', () => {
  test('carries code, value, expected, nearest and a frozen place', () => {
    const error = new ReedplateError({ ...details, nearest: 'B4', where: { bar: 2, beat: 3 } });
    expect(error).toMatchObject({ ...details, nearest: 'B4', where: { bar: 2, beat: 3 } });
    expect(Object.isFrozen(error.where)).toBe(true);
    expect(error).toBeInstanceOf(Error);
    expect(error.name).toBe('ReedplateError');
  });

  test('says value, trouble, place, what was expected and the nearest choice', () => {
    expect(messageOf({ nearest: 'B4', where: { bar: 2, beat: 3 } })).toBe(
      '"H4" is not a note name (bar 2, beat 3): expected a note; did you mean B4?',
    );
    expect(messageOf({})).toBe('"H4" is not a note name: expected a note');
  });

  test('names the path of a field and leaves out the index that the path already says', () => {
    expect(messageOf({ where: { path: 'notes[3].start', index: 3 } })).toContain(
      '(notes[3].start):',
    );
    expect(messageOf({ where: { index: 3 } })).toContain('(index 3):');
    expect(messageOf({ where: { file: 'a.tab', line: 2, column: 7 } })).toContain(
      '(file a.tab, line 2, column 7):',
    );
  });

  test.each([
    [Number.NaN, 'NaN'],
    [Number.POSITIVE_INFINITY, 'Infinity'],
    [undefined, 'undefined'],
    [null, 'null'],
    [{ hole: 3 }, '{"hole":3}'],
    [10n, 'bigint'],
    [Symbol('x'), 'symbol'],
    [() => 1, 'function'],
  ])('shows the value %s as %s', (value, shown) => {
    expect(messageOf({ value })).toBe(`${shown} is not a note name: expected a note`);
  });

  test('shows a value that refers to itself by its type', () => {
    const cycle: Record<string, unknown> = {};
    cycle.self = cycle;
    expect(messageOf({ value: cycle })).toMatch(/^object is not/);
  });

  test('cuts a long value without splitting a pair of surrogates, and quotes a lone one', () => {
    const cut = messageOf({ value: '🎵'.repeat(1_000_000) });
    expect(cut.length).toBeLessThan(120);
    expect(cut).toMatch(/^"(?:🎵)+…" is not a note name/u);
    expect(messageOf({ value: '\uD800' })).toContain(String.raw`"\ud800"`);
  });
});

describe('isReedplateError', () => {
  test('knows an error made by another copy of the package', () => {
    const copy = Object.assign(new Error('x'), { name: 'ReedplateError', code: 'KEY_UNKNOWN' });
    expect(isReedplateError(copy)).toBe(true);
    expect(isReedplateError(new ReedplateError(details))).toBe(true);
  });

  test.each([
    [undefined],
    [null],
    ['ReedplateError'],
    [new Error('x')],
    [{ name: 'ReedplateError', code: 'KEY_UNKNOWN' }],
    [Object.assign(new Error('x'), { code: 'KEY_UNKNOWN' })],
    [Object.assign(new Error('x'), { name: 'ReedplateError' })],
    [Object.assign(new Error('x'), { name: 'ReedplateError', code: 'valueOf' })],
    [Object.assign(new Error('x'), { name: 'ReedplateError', code: 3 })],
  ])('refuses %s', (value) => {
    expect(isReedplateError(value)).toBe(false);
  });
});

describe('ERROR_CODES', () => {
  test('are upper-case words, each with a text that follows the value in a message', () => {
    for (const [code, text] of Object.entries(ERROR_CODES)) {
      expect(code).toMatch(/^[A-Z]+(?:_[A-Z]+)*$/);
      expect(text).toMatch(/^[a-z].*[^.]$/);
    }
  });
});
