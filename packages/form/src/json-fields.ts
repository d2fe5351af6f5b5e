import { type ErrorCode, isReedplateError, ReedplateError, requireOneOf } from '@reedplate/pitch';

/** Fields of an object from JSON, of types not yet known. */
export type JsonFields<Name extends string> = Readonly<Partial<Record<Name, unknown>>>;

/** What is read, for the errors of reading it. */
export interface Reading {
  readonly code: ErrorCode;
  /** Field that holds what is read; empty for the whole. */
  readonly path: string;
}

/**
 * Parses JSON text; what is no text is taken as parsed already.
 *
 * @throws ReedplateError `JSON_MALFORMED`
 */
export function parsedJson(json: unknown): unknown {
  if (typeof json !== 'string') return json;
  try {
    return JSON.parse(json);
  } catch (error) {
    const reason = error instanceof Error ? ` (${error.message})` : '';
    throw new ReedplateError({ code: 'JSON_MALFORMED', value: json, expected: `JSON${reason}` });
  }
}

/** The value, if it is an object with no fields but those known: a misspelled one would be lost. */
export function requireFields<Name extends string>(
  value: unknown,
  known: readonly Name[],
  { code, path }: Reading,
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

/** What a check gives; what it throws becomes an error of the thing that is read. */
export function asErrorOf<Value>({ code, path }: Reading, check: () => Value): Value {
  try {
    return check();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
    const { value, expected, nearest, where } = error;
    throw new ReedplateError({ code, value, expected, nearest, where: { ...where, path } });
  }
}
