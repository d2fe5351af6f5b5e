import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';

/** The error of a value that cannot be part of a line. */
export function invalidLine(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected, where });
}
