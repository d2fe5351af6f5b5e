import { ReedplateError, requireInteger, requireSome } from '@reedplate/pitch';

/**
 * A whole number that a word names, within bounds, both inclusive.
 *
 * @throws ReedplateError `NUMBER_RANGE` with the word as it was typed
 */
export function readWholeNumber(
  word: string,
  bounds: { readonly min: number; readonly max: number; readonly what: string },
): number {
  return requireInteger(/^\d{1,15}$/u.test(word) ? Number(word) : word, bounds);
}

/**
 * A number that a word names.
 *
 * @throws ReedplateError `NUMBER_RANGE` with the word as it was typed
 */
export function readNumber(word: string, what: string): number {
  if (/^-?\d{1,15}(?:\.\d{1,15})?$/u.test(word)) return Number(word);
  throw new ReedplateError({ code: 'NUMBER_RANGE', value: word, expected: `${what}, a number` });
}

/**
 * Words apart by commas.
 *
 * @throws ReedplateError `LIST_EMPTY` where there is none
 */
export function readList(words: string): readonly string[] {
  const listed = words.split(',').map((word) => word.trim());
  return requireSome(
    listed.filter((word) => word !== ''),
    'one word, words apart by commas',
  );
}
