import { type ErrorPlace, isReedplateError, ReedplateError } from './error.js';
import type { ErrorCode } from './error-codes.js';
import { requireOneOf } from './guard.js';

/**
 * Fields of an object from JSON, of types not yet known.
 *
 * @internal
 */
export type JsonFields<Name extends string> = Readonly<Partial<Record<Name, unknown>>>;

/**
 * What is read from JSON, for the errors of reading it.
 *
 * @internal
 */
export interface JsonReading {
  /** Code of the errors. */
  readonly code: ErrorCode;
  /** Field that holds what is read; default empty, for the whole. */
  readonly path?: string;
}

/**
 * Parses JSON text; what is no text is taken as parsed already.
 *
 * @internal
 * @throws ReedplateError `JSON_MALFORMED`
 * @example
 * ```ts
 * import { readJson } from '@reedplate/pitch';
 *
 * readJson('{"holes":10}'); // => { holes: 10 }
 * readJson({ holes: 10 }); // => { holes: 10 }
 * readJson('{"holes":'); // throws JSON_MALFORMED
 * ```
 */
export function readJson(json: unknown): unknown {
  if (typeof json !== 'string') return json;
  try {
    return JSON.parse(json);
  } catch (error) {
    throw new ReedplateError({
      code: 'JSON_MALFORMED',
      value: json,
      expected: 'JSON text',
      where: placeOf(error, json),
    });
  }
}

/** Where the engine says that the text breaks off; its own words quote the text, and differ. */
function placeOf(error: unknown, text: string): ErrorPlace {
  const [, position] = /at position (\d+)/u.exec(error instanceof Error ? error.message : '') ?? [];
  if (position === undefined) return {};
  const before = text.slice(0, Number(position)).split('\n');
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}

/**
 * The value, if it is an object with no fields but those known: a misspelled one would be lost.
 *
 * @internal
 * @throws ReedplateError with the code asked for, and `where.path`
 * @example
 * ```ts
 * import { requireFields } from '@reedplate/pitch';
 *
 * requireFields({ hole: 4 }, ['hole', 'breath'], { code: 'HARP_INVALID' }); // => { hole: 4 }
 * requireFields({ hoel: 4 }, ['hole', 'breath'], { code: 'HARP_INVALID' }); // throws HARP_INVALID
 * ```
 */
export function requireFields<Name extends string>(
  value: unknown,
  known: readonly Name[],
  { code, path = '' }: JsonReading,
): JsonFields<Name> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const expected = `an object with ${known.join(', ')}`;
    throw new ReedplateError({ code, value, expected, where: path === '' ? {} : { path } });
  }
  for (const field of Object.keys(value)) {
    const where = { path: path === '' ? field : `${path}.${field}` };
    requireOneOf(field, known, { what: 'one of the fields', code, where });
  }
  return value as JsonFields<Name>;
}

/**
 * What a check gives; what it throws becomes an error of the thing that is read: with its code, and
 * with more of where it stood.
 *
 * @internal
 * @throws ReedplateError with the code asked for
 * @example
 * ```ts
 * import { asErrorOf, midi } from '@reedplate/pitch';
 *
 * asErrorOf('HARP_INVALID', { hole: 4 }, () => midi('C4')); // => 60
 * asErrorOf('HARP_INVALID', { hole: 4 }, () => midi('H4')); // throws HARP_INVALID
 * ```
 */
export function asErrorOf<Value>(code: ErrorCode, place: ErrorPlace, check: () => Value): Value {
  try {
    return check();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { value, expected, nearest, where } = error;
    throw new ReedplateError({ code, value, expected, nearest, where: { ...where, ...place } });
  }
}
