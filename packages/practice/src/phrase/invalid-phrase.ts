import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';

/** The error of a phrase: what was given, what was expected, and where. */
export function invalidPhrase(
  value: unknown,
  expected: string,
  where: ErrorPlace = {},
): ReedplateError {
  return new ReedplateError({ code: 'PHRASE_INVALID', value, expected, where });
}
