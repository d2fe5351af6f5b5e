import { describe, expect, test } from 'vitest';
import { FORMS } from './catalogue.js';
import { withNinths, withSevenths, withTriads } from './chord-colours.js';
import { formById } from './form-by-id.js';
import { formatForm } from './format-form.js';
import { parseForm } from './parse-form.js';
import { toMinor } from './to-minor.js';

const text = (form: Parameters<typeof formatForm>[0]) =>
  formatForm(form, { barsPerLine: 99 }).replace(/^.*\n/u, '');
const TABLE = parseForm(
  'I | i | I6 | i6 | I7 | Imaj7 | i7 | imaj7 | I9 | I13 | V7b9 | I7#5 | Iaug | iim7b5 | idim | idim7 | Isus4 | N.C.',
);

describe('withTriads', () => {
  test('withTriads leaves third and fifth', () => {
    expect(text(withTriads(TABLE))).toBe(
      '| I | i | I | i | I | % | i | % | I | % | V | Iaug | % | iidim | idim | % | Isus4 | N.C. |',
    );
  });
});

describe('withSevenths', () => {
  test('withSevenths keeps a seventh and adds a minor one, as blues players do', () => {
    expect(text(withSevenths(TABLE))).toBe(
      '| I7 | i7 | I7 | i7 | I7 | Imaj7 | i7 | imaj7 | I7 | % | V7 | I7#5 | % | iim7b5 | idim7 | % | Isus4 | N.C. |',
    );
  });
});

describe('withNinths', () => {
  test('withNinths adds a plain ninth where the fifth and ninth are plain', () => {
    expect(text(withNinths(TABLE))).toBe(
      '| I9 | i9 | I9 | i9 | I9 | Imaj9 | i9 | imaj7 | I9 | % | V7b9 | I7#5 | % | iim7b5 | idim7 | % | Isus4 | N.C. |',
    );
  });
});

describe('toMinor', () => {
  test('toMinor makes i and iv minor, ii half-diminished, and lets V be major', () => {
    expect(text(toMinor('basic'))).toBe(
      '| i7 | % | % | % | iv7 | % | i7 | % | V7 | iv7 | i7 | V7 |',
    );
    expect(text(toMinor(parseForm('I | IV6 | ii | II7 | I9 | IV13 | V')))).toBe(
      '| i | iv6 | iidim | II7 | i9 | iv9 | V |',
    );
  });

  test('toMinor makes V minor on demand', () => {
    expect(text(toMinor('basic', { five: 'v' }))).toContain('| v7 | iv7 | i7 | v7 |');
  });

  test('toMinor leaves chords that lead elsewhere', () => {
    expect(text(toMinor(parseForm('i7 | I7b9 | V7/iv | bVI7 | #IVdim7')))).toBe(
      '| i7 | I7b9 | V7/iv | bVI7 | #ivdim7 |',
    );
  });

  test('toMinor gives a form of minor mode', () => {
    for (const form of FORMS) expect(toMinor(form).mode).toBe('minor');
  });

  test('toMinor refuses another fifth degree', () => {
    expect(() => toMinor('basic', { five: 'V7' as 'V' })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});

describe('variations of quality', () => {
  const variations = [
    withTriads,
    withSevenths,
    withNinths,
    (form: Parameters<typeof toMinor>[0]) => toMinor(form),
  ];

  test.each(variations)('%s keeps the bars and shares, and twice is once', (vary) => {
    for (const form of FORMS) {
      const once = vary(form);
      expect(vary(once)).toBe(once);
      expect(once.bars.map((bar) => bar.map(({ weight }) => weight))).toEqual(
        form.bars.map((bar) => bar.map(({ weight }) => weight)),
      );
      expect({ ...once, bars: [], source: '', mode: '' }).toEqual({
        ...form,
        bars: [],
        source: '',
        mode: '',
      });
    }
  });

  test('a varied form no longer rests on its source alone, an unchanged one does', () => {
    expect(withTriads('vamp').source).toBe('common practice, varied');
    expect(withSevenths('vamp')).toBe(formById('vamp'));
  });
});
