import type { Metre } from '@reedplate/line';
import { chordSuffixes, parseNumeral, TONICS } from '@reedplate/pitch';
import fc from 'fast-check';
import { makeForm } from './make-form.js';
import { FEELS, type Form, type FormBar } from './types.js';

// What the laws of this package are tried on; used by tests only.

const LETTERS = ['I', 'II', 'III', 'IV', 'V', 'VI', 'VII'] as const;

/** Numerals without a slash, on every degree and of every quality. */
export const plainNumerals: fc.Arbitrary<string> = fc
  .tuple(
    fc.constantFrom('', 'b', '#'),
    fc.constantFrom(...LETTERS),
    fc.constantFrom(...chordSuffixes()),
  )
  .map((parts) => parseNumeral(parts.join('')).text);

/** Numerals of every kind, secondary chords among them. */
export const numerals: fc.Arbitrary<string> = fc.oneof(
  { weight: 4, arbitrary: plainNumerals },
  {
    weight: 1,
    arbitrary: fc
      .tuple(
        plainNumerals,
        fc.constantFrom('', 'b'),
        fc.constantFrom(...LETTERS, 'ii', 'iii', 'vi'),
      )
      .map(([chord, sign, target]) => parseNumeral(`${chord}/${sign}${target}`).text),
  },
);

/** Bars of up to six chords, N.C. among them. */
export function barsOf(numeral: fc.Arbitrary<string>): fc.Arbitrary<FormBar> {
  const chord = fc.record({
    numeral: fc.option(numeral, { freq: 8 }),
    weight: fc.integer({ min: 1, max: 10 }),
  });
  return fc.array(chord, { minLength: 1, maxLength: 6 });
}

/** Metres of every kind, simple, compound and odd. */
export const metres: fc.Arbitrary<Metre> = fc.constantFrom(
  '4/4',
  '3/4',
  '2/4',
  '2/2',
  '5/4',
  '7/8',
  '3/8',
  '6/8',
  '9/8',
  '12/8',
  '1/16',
);

/** Forms of any length, metre, feel and chords; give plain numerals to leave secondary chords out. */
export function formsOf(numeral: fc.Arbitrary<string> = numerals): fc.Arbitrary<Form> {
  return fc
    .record({
      bars: fc.array(barsOf(numeral), { minLength: 1, maxLength: 20 }),
      metre: metres,
      feel: fc.constantFrom(...FEELS),
      name: fc.string(),
    })
    .map(({ bars, ...details }) => makeForm(bars, details));
}

/** Every tonic that a band names. */
export const tonics = fc.constantFrom(...TONICS);
