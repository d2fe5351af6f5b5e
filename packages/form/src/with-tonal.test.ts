import { Key, Progression } from 'tonal';
import { describe, expect, test } from 'vitest';
import { formById } from './form-by-id.js';
import { makeForm } from './make-form.js';
import { parseForm } from './parse-form.js';
import { recogniseForm } from './recognise-form.js';

const BASIC = formById('basic');
const NUMERALS = BASIC.bars.map(([chord]) => chord?.numeral ?? 'I');

describe('bars and keys as tonal gives them', () => {
  test.each(['G', 'Ab', 'C#', 'Cb'])(
    'parseForm and recogniseForm take the chord names of %s',
    (tonic) => {
      const names = Progression.fromRomanNumerals(tonic, NUMERALS);
      expect(parseForm(names, { key: Key.majorKey(tonic) }).bars).toEqual(BASIC.bars);
      const { best } = recogniseForm(names, { key: Key.majorKey(tonic) });
      expect(best.map(({ form }) => form)).toContain('basic');
    },
  );

  test('parseForm and makeForm take the numerals, with minor chords as tonal writes them', () => {
    const numerals = Progression.toRomanNumerals('C', ['Cm7', 'Fm7', 'G7', 'Eb7']);
    expect(numerals).toEqual(['Im7', 'IVm7', 'V7', 'bIII7']);
    const { bars, mode } = parseForm(numerals);
    expect(bars.map(([chord]) => chord?.numeral)).toEqual(['i7', 'iv7', 'V7', 'bIII7']);
    expect(mode).toBe('minor');
    const made = makeForm(numerals.map((numeral) => [{ numeral, weight: 1 }]));
    expect(made.bars).toEqual(bars);
  });

  test('parseForm names the bar of what it cannot read', () => {
    expect(() => parseForm(['G7', 'H7'], { key: 'G' })).toThrow(
      expect.objectContaining({ code: 'FORM_SYNTAX', value: 'H7' }),
    );
    for (const none of [[], [''], [5], [null], {}, undefined]) {
      expect(() => parseForm(none as never)).toThrow(
        expect.objectContaining({ code: 'FORM_SYNTAX' }),
      );
    }
  });
});
