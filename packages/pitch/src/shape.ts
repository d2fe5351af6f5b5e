import { ReedplateError } from './error.js';
import type { ErrorCode } from './error-codes.js';

/** What a field of a thing holds. */
type FieldKind = 'list' | 'number' | 'object' | 'text';

/**
 * The fields that tell a thing from others, and what each holds.
 *
 * @internal
 */
export type Shape<Value> = { readonly [Name in keyof Value]?: FieldKind };

/**
 * Wording for {@link requireShape}.
 *
 * @internal
 */
export interface ShapeWords {
  /** What the thing is and where it comes from, for the message: `a chart, as makeChart gives it`. */
  readonly what: string;
  readonly code: ErrorCode;
  /** Where the thing stands; default nowhere but in the call. */
  readonly path?: string;
}

/**
 * Returns `value` if it has the fields by which a thing is known: what every function does that takes
 * a thing that another made, so that a chart given for a line is named and not stumbled over. What
 * the fields hold is not looked into.
 *
 * @internal
 * @throws ReedplateError with the code asked for, and `where.path` of the field
 * @example
 * ```ts
 * import { requireShape } from '@reedplate/pitch';
 *
 * const words = { what: 'a line, as makeLine gives it', code: 'LINE_INVALID' } as const;
 * requireShape({ notes: [] }, { notes: 'list' }, words); // => { notes: [] }
 * requireShape<{ notes: string[] }>('C4' as never, { notes: 'list' }, words); // throws LINE_INVALID
 * ```
 */
export function requireShape<Value extends object>(
  value: Value,
  shape: Shape<Value>,
  { what, code, path = '' }: ShapeWords,
): Value {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const where = path === '' ? {} : { path };
    throw new ReedplateError({ code, value, expected: what, where });
  }
  for (const [field, kind] of Object.entries(shape)) {
    const held: unknown = value[field as keyof Value];
    if (isOfKind(held, kind as FieldKind)) continue;
    const where = { path: path === '' ? field : `${path}.${field}` };
    throw new ReedplateError({ code, value: held, expected: what, where });
  }
  return value;
}

function isOfKind(value: unknown, kind: FieldKind): boolean {
  switch (kind) {
    case 'list':
      return Array.isArray(value);
    case 'number':
      return typeof value === 'number' && Number.isFinite(value);
    case 'text':
      return typeof value === 'string';
    default:
      return typeof value === 'object' && value !== null;
  }
}

/**
 * A list of things whose fields hold what they should, checked as {@link requireShape} checks one.
 *
 * @internal
 */
export function requireShapes<Value extends object>(
  list: readonly Value[],
  shape: Shape<Value>,
  words: ShapeWords,
): readonly Value[] {
  requireShape({ list }, { list: 'list' }, words);
  for (const [at, value] of list.entries()) {
    requireShape(value, shape, { ...words, path: `${words.path ?? ''}[${at}]` });
  }
  return list;
}
