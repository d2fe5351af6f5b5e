import { ReedplateError } from '@reedplate/pitch';

/** The error of a list that must hold something. */
export function emptyList(expected: string): ReedplateError {
  return new ReedplateError({ code: 'LIST_EMPTY', value: [], expected });
}
