import { describeValue, visible } from './describe-value.js';
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

/**
 * A {@link ReedplateError} as plain JSON: what `JSON.stringify` writes of it, and its `cause`, which
 * alone of its fields survives `structuredClone` and `postMessage`.
 */
export interface ErrorRecord {
  readonly name: 'ReedplateError';
  readonly code: ErrorCode;
  readonly message: string;
  /**
   * The offending value where it is text of up to 200 characters, a finite number, a boolean or
   * null; else as the message shows it.
   */
  readonly value: string | number | boolean | null;
  readonly expected: string;
  readonly nearest?: string;
  readonly where: ErrorPlace;
}

/** What Node, Deno and Bun ask an object for its print. */
const PRINT = /* @__PURE__ */ Symbol.for('nodejs.util.inspect.custom');

/**
 * The one error that Reedplate throws: a stable `code`, the offending `value`, what was
 * `expected`, the `nearest` valid choice and `where` the value stood.
 *
 * `JSON.stringify` writes all of it, a value that is no JSON in words. A copy made by
 * `structuredClone` or `postMessage` keeps the same in its `cause`; {@link isReedplateError} knows such
 * a copy and gives its fields back.
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
 *   JSON.parse(JSON.stringify(error)).nearest; // => 'B4'
 *   isReedplateError(structuredClone(error)); // => true
 * }
 * ```
 */
export class ReedplateError extends Error {
  override readonly name = 'ReedplateError';
  readonly code: ErrorCode;
  /** As it was given; of a copy from another thread, as in {@link ErrorRecord}. */
  declare readonly value: unknown;
  declare readonly expected: string;
  declare readonly nearest: string | undefined;
  declare readonly where: ErrorPlace;
  declare readonly cause: ErrorRecord;

  /** @param details what went wrong; the message is composed from it */
  constructor(details: ErrorDetails) {
    const record = recordOf(details);
    super(record.message, { cause: record });
    this.code = details.code;
    const { value, expected, nearest } = details;
    // Node prints what can be listed of an uncaught error, and the value may be a whole chart.
    for (const [field, held] of Object.entries({ value, expected, nearest, where: record.where })) {
      Object.defineProperty(this, field, { value: held });
    }
  }

  /** What `JSON.stringify` writes. */
  toJSON(): ErrorRecord {
    return this.cause;
  }

  /** Short, whatever the value: the message says all that the fields do. */
  [PRINT](): string {
    return `${this.stack} { code: '${this.code}' }`;
  }
}

/**
 * Whether a caught value is a {@link ReedplateError}, also when it comes from another copy of the
 * package (an ESM and a CommonJS copy in one program, say), or was copied by `structuredClone` or
 * `postMessage`: such a copy gets the fields back that copying left out.
 *
 * @example
 * ```ts
 * import { isReedplateError } from '@reedplate/pitch';
 *
 * isReedplateError(new Error('other')); // => false
 * ```
 */
export function isReedplateError(error: unknown): error is ReedplateError {
  if (!(error instanceof Error)) return false;
  if (error.name === 'ReedplateError' && 'code' in error) return isErrorCode(error.code);
  if (!isRecord(error.cause) || error.cause.message !== error.message) return false;
  const { message: _, value, ...fields } = error.cause;
  Object.assign(error, { nearest: undefined, ...fields, value });
  return true;
}

function isErrorCode(code: unknown): code is ErrorCode {
  return typeof code === 'string' && Object.hasOwn(ERROR_CODES, code);
}

function isRecord(cause: unknown): cause is ErrorRecord {
  if (typeof cause !== 'object' || cause === null || cause instanceof Error) return false;
  const { name, code } = cause as Partial<ErrorRecord>;
  return name === 'ReedplateError' && isErrorCode(code);
}

function recordOf(details: ErrorDetails): ErrorRecord {
  const { code, value, expected, nearest, where = {} } = details;
  return Object.freeze({
    name: 'ReedplateError',
    code,
    message: composeMessage(details),
    value: isPlain(value) ? value : describeValue(value),
    expected,
    ...(nearest === undefined ? {} : { nearest }),
    where: Object.freeze({ ...where }),
  });
}

/** Longer text is cut, as in the message: an error is no place for a whole file. */
const LONGEST_KEPT = 200;

function isPlain(value: unknown): value is string | number | boolean | null {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value === 'string') return value.length <= LONGEST_KEPT;
  return typeof value === 'boolean' || value === null;
}

/** No message is longer, whatever text of the caller's it quotes. */
const LONGEST_MESSAGE = 300;
const LONGEST_PLACE = 80;
const LONGEST_CHOICE = 60;

function composeMessage({ code, value, expected, nearest, where = {} }: ErrorDetails): string {
  const head = `${describeValue(value)} ${ERROR_CODES[code]}${describePlace(where)}: expected `;
  const choice = visible(nearest ?? '');
  const isNear = nearest !== undefined && choice.length <= LONGEST_CHOICE;
  const hint = isNear ? `; did you mean ${choice}?` : '';
  const room = LONGEST_MESSAGE - head.length - hint.length;
  return `${head}${shorten(visible(expected), room)}${hint}`;
}

/** Text within so many signs, cut after a word. */
function shorten(text: string, room: number): string {
  if (text.length <= room) return text;
  const cut = text.slice(0, room - 2);
  const end = cut.lastIndexOf(' ');
  return `${(end > 0 ? cut.slice(0, end) : cut).replace(/[\uD800-\uDBFF]$/, '')} …`;
}

function describePlace({ path, index, ...counted }: ErrorPlace): string {
  const parts = Object.entries(counted).map(([name, at]) => `${name} ${at}`);
  // The path of a field already says which index it stands at.
  if (path !== undefined) parts.unshift(path);
  else if (index !== undefined) parts.unshift(`index ${index}`);
  if (parts.length === 0) return '';
  const place = visible(parts.join(', '));
  // The end of a path says most.
  return place.length <= LONGEST_PLACE ? ` (${place})` : ` (…${place.slice(1 - LONGEST_PLACE)})`;
}
