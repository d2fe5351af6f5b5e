import { coloursOf, withQuality } from './quality.js';
import { type FormByNameOptions, type FormLike, formByName } from './to-form.js';
import type { Form } from './types.js';
import { mapChords } from './vary.js';

/**
 * The form in plain triads: sevenths and extensions left out, suspended chords alone.
 *
 * @example
 * ```ts
 * import { formatForm, parseForm, withTriads } from '@reedplate/form';
 *
 * formatForm(withTriads(parseForm('I7 | iv7 | #IVdim7'))); // => '| I | iv | #ivdim |'
 * ```
 */
export function withTriads(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withTriads');
  return mapChords(form, triad);
}

/**
 * The form in seventh chords, as blues players add them: a chord keeps the seventh it has; a major
 * triad or sixth takes a minor seventh, so I becomes I7; a diminished triad a diminished one.
 *
 * @example
 * ```ts
 * import { formatForm, parseForm, withSevenths } from '@reedplate/form';
 *
 * formatForm(withSevenths(parseForm('I | iv | IVmaj7 | V9'))); // => '| I7 | iv7 | IVmaj7 | V7 |'
 * ```
 */
export function withSevenths(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withSevenths');
  return mapChords(form, seventh);
}

/**
 * The form in ninth chords: as {@link withSevenths}, and the plain ninth added to major, minor and
 * dominant sevenths. Chords with an altered fifth or ninth stay as they are.
 *
 * @example
 * ```ts
 * import { formatForm, parseForm, withNinths } from '@reedplate/form';
 *
 * formatForm(withNinths(parseForm('I | iv | V7b9 | #IVdim7'))); // => '| I9 | iv9 | V7b9 | #ivdim7 |'
 * ```
 */
export function withNinths(given: FormLike, options: FormByNameOptions = {}): Form {
  const form = formByName(given, options, 'withNinths');
  return mapChords(form, ninth);
}

function triad(numeral: string): string {
  const { third, fifth } = coloursOf(numeral);
  if (third === undefined) return numeral;
  const altered = third === 'b3' && fifth === 'b5' ? 'dim' : undefined;
  const raised = third === '3' && fifth === '#5' ? 'aug' : undefined;
  return withQuality(numeral, altered ?? raised ?? (third === '3' ? '' : 'm'));
}

/** Suffix for a third, fifth and seventh together; `-` where the chord has no seventh yet. */
const SEVENTH_SUFFIXES: ReadonlyMap<string, string> = new Map([
  ['3 5 -', '7'],
  ['3 5 b7', '7'],
  ['3 5 7', 'maj7'],
  ['3 b5 -', '7b5'],
  ['3 b5 b7', '7b5'],
  ['3 #5 -', '7#5'],
  ['3 #5 b7', '7#5'],
  ['3 #5 7', 'maj7#5'],
  ['b3 5 -', 'm7'],
  ['b3 5 b7', 'm7'],
  ['b3 5 7', 'mMaj7'],
  ['b3 b5 -', 'dim7'],
  ['b3 b5 b7', 'm7b5'],
  ['b3 b5 bb7', 'dim7'],
]);

function seventh(numeral: string): string {
  const { third, fifth = '5', seventh: has = '-' } = coloursOf(numeral);
  const suffix = SEVENTH_SUFFIXES.get(`${third} ${fifth} ${has}`);
  return suffix === undefined ? numeral : withQuality(numeral, suffix);
}

const NINTH_SUFFIXES: ReadonlyMap<string, string> = new Map([
  ['3 5 b7', '9'],
  ['3 5 7', 'maj9'],
  ['b3 5 b7', 'm9'],
]);

function ninth(numeral: string): string {
  if (coloursOf(numeral).altersNinth) return numeral;
  const base = seventh(numeral);
  const { third, fifth, seventh: has } = coloursOf(base);
  const suffix = NINTH_SUFFIXES.get(`${third} ${fifth} ${has}`);
  return suffix === undefined ? base : withQuality(base, suffix);
}
