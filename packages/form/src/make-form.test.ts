import { describe, expect, test } from 'vitest';
import { makeForm } from './make-form.js';
import type { FormBar } from './types.js';

const bar = (...numerals: (string | null)[]): FormBar =>
  numerals.map((numeral) => ({ numeral, weight: 1 }));
const invalid = (where: object = {}) => expect.objectContaining({ code: 'FORM_INVALID', where });

describe('makeForm', () => {
  test('makeForm fills in what it is not told', () => {
    expect(makeForm([bar('I7')])).toEqual({
      id: 'custom',
      name: 'Custom form',
      description: '',
      mode: 'major',
      metre: '4/4',
      feel: 'shuffle',
      bars: [bar('I7')],
      use: '',
      source: 'not stated',
    });
  });

  test.each<[string, (string | null)[], string]>([
    ['major', ['I7', 'iv7'], 'of its first tonic chord'],
    ['minor', ['i', 'V7'], 'of its first tonic chord'],
    ['minor', ['iv7', 'V7', 'i7', 'I7'], 'of its first tonic chord, wherever that stands'],
    ['major', ['ii7', 'V7'], 'major where it has no tonic'],
    ['major', [null], 'major where it has no chord'],
    ['major', ['I5', 'iv'], 'major where its tonic has no third'],
    ['major', ['i7/IV', 'IV7'], 'not that of a secondary chord'],
  ])('makeForm finds the mode %s: %j, %s', (mode, numerals) => {
    expect(makeForm(numerals.map((numeral) => bar(numeral))).mode).toBe(mode);
  });

  test('makeForm writes numerals in canonical text', () => {
    expect(makeForm([bar('IIm7', '♯IVdim7', 'ii-7')]).bars).toEqual([bar('ii7', '#ivdim7', 'ii7')]);
  });

  test('makeForm leaves what it is given alone', () => {
    const given = [
      [
        { numeral: 'IIm7', weight: 2 },
        { numeral: 'V7', weight: 2 },
      ],
    ];
    const before = JSON.stringify(given);
    expect(makeForm(given).bars).toEqual([bar('ii7', 'V7')]);
    expect(JSON.stringify(given)).toBe(before);
    expect(Object.isFrozen(given[0])).toBe(false);
  });

  test.each([
    ['no list', 'I7', {}],
    ['no bars', [], {}],
    ['too many bars', Array.from({ length: 1025 }, () => bar('I7')), {}],
    ['a bar that is no list', [bar('I'), 7], { bar: 2 }],
    ['a bar that is text of no numeral', ['I', 'H7'], { bar: 2 }],
    ['a bar without chords', [bar('I'), []], { bar: 2 }],
    ['a chord that is no object', [['I7']], { bar: 1 }],
    ['a chord without numeral', [[{ weight: 1 }]], { bar: 1 }],
    ['a numeral that there is not', [bar('I'), bar('VIII')], { bar: 2 }],
    ['a numeral from Object.prototype', [bar('valueOf')], { bar: 1 }],
    ['a weight of nothing', [[{ numeral: 'I', weight: 0 }]], { bar: 1 }],
    ['a weight that is no number', [[{ numeral: 'I', weight: '1' }]], { bar: 1 }],
    ['a weight that is not whole', [[{ numeral: 'I', weight: 0.5 }]], { bar: 1 }],
  ])('makeForm refuses %s', (_what, bars, where) => {
    expect(() => makeForm(bars as FormBar[])).toThrow(invalid(where));
  });

  test('makeForm takes a numeral alone for a bar of it', () => {
    expect(makeForm(['I7', bar('IV7')]).bars).toEqual([bar('I7'), bar('IV7')]);
  });

  test('makeForm counts shares in lowest terms', () => {
    const halves = [
      { numeral: 'I', weight: 64 },
      { numeral: 'V', weight: 64 },
    ];
    expect(makeForm([halves]).bars).toEqual([bar('I', 'V')]);
    const uneven = [
      { numeral: 'I', weight: 63 },
      { numeral: 'V', weight: 2 },
    ];
    expect(() => makeForm([uneven])).toThrow(invalid({ bar: 1 }));
  });

  test.each(['', 'Basic', 'two words', 'ends-', '-begins', 'umlaut-ä', '__proto__'])(
    'makeForm refuses the id %j',
    (id) => {
      expect(() => makeForm([bar('I')], { id })).toThrow(invalid({ path: 'id' }));
    },
  );

  test.each(['name', 'description', 'use', 'source'])(
    'makeForm refuses a %s that is no text',
    (field) => {
      expect(() => makeForm([bar('I')], { [field]: 7 })).toThrow(invalid({ path: field }));
    },
  );

  test('makeForm says which numeral was meant', () => {
    expect(() => makeForm([bar('I8')])).toThrow(
      expect.objectContaining({ value: 'I8', nearest: expect.any(String) }),
    );
  });
});
