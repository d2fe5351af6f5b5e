import { type OptionNames, requireOneOf, requireOptions } from '@reedplate/pitch';
import { coloursOf, plainStep, withQuality } from './quality.js';
import { type FormLike, type KnownForms, toForm } from './to-form.js';
import type { Form } from './types.js';
import { mapChords } from './vary.js';

/** Which chord a minor form has on its fifth degree. */
export interface ToMinorOptions {
  /** `V` keeps the major third, the default; `v` makes it minor. */
  readonly five?: 'V' | 'v';
  /** Forms of one's own that are known by their id. */
  readonly known?: KnownForms;
}

const TO_MINOR_OPTIONS: OptionNames<ToMinorOptions> = { five: true, known: true };

/**
 * The form on a minor tonic: I and IV become minor, ii half-diminished, V stays or becomes minor.
 * Other chords stay: a secondary dominant, ♭VI, a passing chord and `I7b9` lead where they led.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { formatForm, parseForm, toMinor } from '@reedplate/form';
 *
 * const form = parseForm('I7 | IV7 | ii7 | V7');
 * formatForm(toMinor(form)); // => '| i7 | iv7 | iim7b5 | V7 |'
 * formatForm(toMinor(form, { five: 'v' })); // => '| i7 | iv7 | iim7b5 | v7 |'
 * ```
 */
export function toMinor(given: FormLike, options: ToMinorOptions = {}): Form {
  const { five = 'V', known } = requireOptions(options, TO_MINOR_OPTIONS, 'toMinor');
  const form = toForm(given, known);
  requireOneOf(five, ['V', 'v'], { what: 'a fifth degree' });
  const minorSteps = new Set<number | undefined>(five === 'v' ? [1, 4, 5] : [1, 4]);
  return mapChords(form, (numeral) => {
    const step = plainStep(numeral);
    if (step === 2) return halfDiminished(numeral);
    return minorSteps.has(step) ? minor(numeral) : numeral;
  });
}

function minor(numeral: string): string {
  const { third, seventh, altersNinth } = coloursOf(numeral);
  if (third !== '3' || altersNinth) return numeral;
  if (seventh !== undefined) return withQuality(numeral, /9|13/u.test(numeral) ? 'm9' : 'm7');
  return withQuality(numeral, numeral.endsWith('6') ? 'm6' : 'm');
}

/** A major chord on the second degree is a dominant of V and stays. */
function halfDiminished(numeral: string): string {
  const { third, fifth, seventh } = coloursOf(numeral);
  if (third !== 'b3' || fifth === 'b5') return numeral;
  return withQuality(numeral, seventh === undefined ? 'dim' : 'm7b5');
}
