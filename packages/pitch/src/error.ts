import { ERROR_CODES, type ErrorCode } from './error-codes.js';

/**
 * Where in the input the offending value stood. Every field is optional; holes, bars, beats,
 * lines and columns count from 1, indexes from 0.
 */
export interface ErrorPlace {
  readonly hole?: number;
  readonly breath?: 'blow' | 'draw';
  readonly bar?: number;
  readonly beat?: number;
  readonly line?: number;
  readonly column?: number;
  readonly index?: number;
  /** Field of a JSON value, such as `notes[3].start`; names the index too. */
  readonly path?: string;
  readonly file?: string;
}

/** What a {@link ReedplateError} is made from. */
export interface ErrorDetails {
  readonly code: ErrorCode;
  /** The offending value, as it was given. */
  readonly value: unknown;
  /** What would have been right, as a noun phrase: `a hole from 1 to 10`. */
  readonly expected: string;
  /** The nearest valid choice, where there is one. */
  readonly nearest?: string | undefined;
  readonly where?: ErrorPlace;
}

const LONGEST_SHOWN_VALUE = 60;

/**
 * The one error that Reedplate throws: a stable `code`, the offending `value`, what was
 * `expected`, the `nearest` valid choice and `where` the value stood.
 *
 * @example
 * ```ts
 * import { isReedplateError, midi } from '@reedplate/pitch';
 *
 * try {
 *   midi('H4');
 * } catch (error) {
 *   if (!isReedplateError(error)) throw error;
 *   error.code; // => 'NOTE_UNKNOWN'
 *   error.value; // => 'H4'
 * }
 * ```
 */
export class ReedplateError extends Error {
  override readonly name = 'ReedplateError';
  readonly code: ErrorCode;
  readonly value: unknown;
  readonly expected: string;
  readonly nearest: string | undefined;
  readonly where: ErrorPlace;

  /** @param details what went wrong; the message is composed from it */
  constructor(details: ErrorDetails) {
    super(composeMessage(details));
    this.code = details.code;
    this.value = details.value;
    this.expected = details.expected;
    this.nearest = details.nearest;
    this.where = Object.freeze({ ...details.where });
  }
}

/**
 * Whether a caught value is a {@link ReedplateError}, also when it comes from another copy of the
 * package (an ESM and a CommonJS copy in one program, say).
 *
 * @example
 * ```ts
 * import { isReedplateError } from '@reedplate/pitch';
 *
 * isReedplateError(new Error('other')); // => false
 * ```
 */
export function isReedplateError(error: unknown): error is ReedplateError {
  return (
    error instanceof Error &&
    error.name === 'ReedplateError' &&
    'code' in error &&
    typeof error.code === 'string' &&
    Object.hasOwn(ERROR_CODES, error.code)
  );
}

function composeMessage({ code, value, expected, nearest, where = {} }: ErrorDetails): string {
  const hint = nearest === undefined ? '' : `; did you mean ${nearest}?`;
  const place = describePlace(where);
  return `${describeValue(value)} ${ERROR_CODES[code]}${place}: expected ${expected}${hint}`;
}

function describePlace({ path, index, ...counted }: ErrorPlace): string {
  const parts = Object.entries(counted).map(([name, at]) => `${name} ${at}`);
  // The path of a field already says which index it stands at.
  if (path !== undefined) parts.unshift(path);
  else if (index !== undefined) parts.unshift(`index ${index}`);
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

function describeValue(value: unknown): string {
  return typeof value === 'string' ? JSON.stringify(shorten(value)) : shorten(safeText(value));
}

function shorten(text: string): string {
  if (text.length <= LONGEST_SHOWN_VALUE) return text;
  // A pair of surrogates is kept whole or left out.
  const end = text.slice(0, LONGEST_SHOWN_VALUE - 1).replace(/[\uD800-\uDBFF]$/, '');
  return `${end}…`;
}

/** JSON where there is any; a bigint, a function, a symbol or a cycle has none. */
function safeText(value: unknown): string {
  if (typeof value === 'number' || value === undefined) return String(value);
  try {
    return JSON.stringify(value) ?? typeof value;
  } catch {
    return typeof value;
  }
}
