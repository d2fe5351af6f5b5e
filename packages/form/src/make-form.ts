import { type Metre, parseMetre } from '@reedplate/line';
import {
  isReedplateError,
  type Mode,
  type OptionNames,
  parseNumeral,
  ReedplateError,
  requireInteger,
  requireOptions,
} from '@reedplate/pitch';
import { coloursOf, plainStep } from './quality.js';
import { lowestTerms, sharesOf } from './shares.js';
import { toFeel } from './to-feel.js';
import type { Feel, Form, FormBar, FormChord } from './types.js';

/** What a form is called, how it is felt and where it comes from. */
export interface FormDetails {
  /** Lower-case words with hyphens; default `custom`. */
  readonly id?: string;
  /** Default `Custom form`. */
  readonly name?: string;
  /** Default empty. */
  readonly description?: string;
  /** Default `4/4`. */
  readonly metre?: Metre;
  /** `slow` is read as `slow-12/8`; default `shuffle`. */
  readonly feel?: Feel | 'slow';
  /** Where it is used; default empty. */
  readonly use?: string;
  /** Default `not stated`. */
  readonly source?: string;
}

/**
 * The names of all details of a form.
 */
export const FORM_DETAILS: OptionNames<FormDetails> = {
  id: true,
  name: true,
  description: true,
  metre: true,
  feel: true,
  use: true,
  source: true,
};

/** Most bars of a form: forty choruses of twelve and more. */
export const MOST_BARS = 1024;

/** Finest division of a bar, so that every share lasts at least a tick in every metre. */
export const MOST_SHARES = 64;

const ID = /^[a-z0-9]+(?:-[a-z0-9]+)*$/u;

/**
 * Makes a form from its bars: checked, frozen, numerals in canonical text and the shares of each
 * bar in lowest terms. The mode is that of the first tonic chord, major where there is none.
 *
 * @param bars 1 to 1024 bars, each of 1 to 64 shares in all; a numeral alone is a bar of it, so that what
 * `Progression.toRomanNumerals` of tonal gives are bars
 * @throws ReedplateError `FORM_INVALID` with `where.bar`, or `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { makeForm } from '@reedplate/form';
 *
 * const vamp = makeForm([[{ numeral: 'i7', weight: 1 }]], { id: 'minor-vamp' });
 * vamp.mode; // => 'minor'
 * makeForm(['I7', 'IV7']).bars.length; // => 2
 * makeForm([[{ numeral: 'H7', weight: 1 }]]); // throws FORM_INVALID
 * ```
 */
export function makeForm(bars: readonly (FormBar | string)[], details: FormDetails = {}): Form {
  const { id = 'custom', name = 'Custom form' } = requireOptions(details, FORM_DETAILS, 'makeForm');
  const {
    description = '',
    use = '',
    metre = '4/4',
    feel = 'shuffle',
    source = 'not stated',
  } = details;
  if (!Array.isArray(bars) || bars.length === 0 || bars.length > MOST_BARS) {
    throw invalid(bars, `a list of 1 to ${MOST_BARS} bars`);
  }
  parseMetre(metre);
  const checked = bars.map(checkBar);
  return Object.freeze({
    id: checkId(id),
    name: checkText(name, 'name'),
    description: checkText(description, 'description'),
    mode: modeOf(checked),
    metre,
    feel: toFeel(feel),
    bars: Object.freeze(checked),
    use: checkText(use, 'use'),
    source: checkText(source, 'source'),
  });
}

function checkBar(given: FormBar | string, index: number): FormBar {
  const where = { bar: index + 1 };
  const bar = typeof given === 'string' ? [{ numeral: given, weight: 1 }] : given;
  if (!Array.isArray(bar) || bar.length === 0) throw invalid(bar, 'at least one chord', where);
  const chords = lowestTerms(bar.map((chord: FormChord) => checkChord(chord, index)));
  const total = sharesOf(chords);
  if (total > MOST_SHARES) throw invalid(total, `at most ${MOST_SHARES} shares`, where);
  return Object.freeze(chords.map((chord) => Object.freeze(chord)));
}

function checkChord(chord: FormChord, index: number): FormChord {
  const where = { bar: index + 1 };
  if (typeof chord !== 'object' || chord === null) {
    throw invalid(chord, 'a chord with numeral and weight', where);
  }
  const weight = requireInteger(chord.weight, {
    min: 1,
    max: MOST_SHARES,
    what: 'a weight',
    code: 'FORM_INVALID',
    where,
  });
  return { numeral: chord.numeral === null ? null : checkNumeral(chord.numeral, index), weight };
}

function checkNumeral(numeral: string, index: number): string {
  try {
    return parseNumeral(numeral).text;
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { value, expected, nearest } = error;
    throw new ReedplateError({
      code: 'FORM_INVALID',
      value,
      expected: `${expected}, or null for no chord`,
      nearest,
      where: { bar: index + 1 },
    });
  }
}

function modeOf(bars: readonly FormBar[]): Mode {
  const isTonic = (numeral: string): boolean => plainStep(numeral) === 1;
  const tonic = bars.flat().find(({ numeral }) => numeral !== null && isTonic(numeral))?.numeral;
  return tonic && coloursOf(tonic).third === 'b3' ? 'minor' : 'major';
}

function checkId(id: unknown): string {
  if (typeof id === 'string' && ID.test(id)) return id;
  throw invalid(id, 'an id of lower-case words with hyphens', { path: 'id' });
}

function checkText(text: unknown, path: string): string {
  if (typeof text === 'string') return text;
  throw invalid(text, 'text', { path });
}

function invalid(
  value: unknown,
  expected: string,
  where: { readonly bar?: number; readonly path?: string } = {},
): ReedplateError {
  return new ReedplateError({ code: 'FORM_INVALID', value, expected, where });
}
