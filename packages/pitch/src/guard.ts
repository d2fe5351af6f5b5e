import { type ErrorPlace, ReedplateError } from './error.js';
import type { ErrorCode } from './error-codes.js';
import { nearestOf } from './nearest.js';

/**
 * Bounds and wording for {@link requireInteger}.
 *
 * @internal
 */
export interface IntegerBounds {
  /** Smallest value allowed (inclusive); without it any safe integer up to `max`. */
  readonly min?: number;
  /** Largest value allowed (inclusive); without it any safe integer from `min` up. */
  readonly max?: number;
  /** What the number is, for the message: `a hole`. */
  readonly what: string;
  /** Default `NUMBER_RANGE`. */
  readonly code?: ErrorCode;
  readonly where?: ErrorPlace;
}

/**
 * Returns `value` if it is an integer within bounds, both inclusive.
 *
 * @internal
 * @throws ReedplateError `NUMBER_RANGE`, or the code asked for
 * @example
 * ```ts
 * import { requireInteger } from '@reedplate/pitch';
 *
 * requireInteger(3, { min: 1, max: 12, what: 'a position' }); // => 3
 * requireInteger(13, { min: 1, max: 12, what: 'a position' }); // throws NUMBER_RANGE
 * ```
 */
export function requireInteger(value: unknown, bounds: IntegerBounds): number {
  const { min = Number.MIN_SAFE_INTEGER, max = Number.MAX_SAFE_INTEGER } = bounds;
  if (typeof value === 'number' && Number.isSafeInteger(value) && value >= min && value <= max) {
    return value + 0; // a negative zero is no zero of JSON
  }
  const { what, code = 'NUMBER_RANGE', where = {} } = bounds;
  throw new ReedplateError({
    code,
    value,
    expected: `${what}, ${rangeText(bounds)}`,
    nearest: typeof value === 'number' ? nearestInteger(value, min, max) : undefined,
    where,
  });
}

function nearestInteger(value: number, min: number, max: number): string | undefined {
  return Number.isNaN(value) ? undefined : `${Math.min(max, Math.max(min, Math.round(value)))}`;
}

function rangeText({ min, max }: Pick<IntegerBounds, 'min' | 'max'>): string {
  if (min !== undefined && max !== undefined) return `a whole number from ${min} to ${max}`;
  if (min !== undefined) return `a whole number from ${min} up`;
  return max === undefined ? 'a whole number' : `a whole number up to ${max}`;
}

/**
 * Bounds and wording for {@link requirePositive}.
 *
 * @internal
 */
export interface PositiveBounds {
  /** Largest value allowed (inclusive); without it any finite number. */
  readonly max?: number;
  /** What the number is, with its unit, for the message: `a frequency in Hz`. */
  readonly what: string;
  /** Default `NUMBER_RANGE`. */
  readonly code?: ErrorCode;
  readonly where?: ErrorPlace;
}

/**
 * Returns `value` if it is a finite number above 0 and no larger than the bound.
 *
 * @internal
 * @throws ReedplateError `NUMBER_RANGE`, or the code asked for
 * @example
 * ```ts
 * import { requirePositive } from '@reedplate/pitch';
 *
 * requirePositive(442.5, { what: 'a frequency in Hz' }); // => 442.5
 * requirePositive(0, { what: 'a frequency in Hz' }); // throws NUMBER_RANGE
 * ```
 */
export function requirePositive(value: unknown, bounds: PositiveBounds): number {
  const { max = Number.MAX_VALUE, what, code = 'NUMBER_RANGE', where = {} } = bounds;
  if (typeof value === 'number' && value > 0 && value <= max) return value;
  const atMost = bounds.max === undefined ? '' : ` and at most ${max}`;
  throw new ReedplateError({ code, value, expected: `${what}, above 0${atMost}`, where });
}

/**
 * Wording for {@link requireOneOf}.
 *
 * @internal
 */
export interface ChoiceOptions {
  /** What is chosen, for the message: `a breath`. */
  readonly what: string;
  /** Default `OPTION_UNKNOWN`. */
  readonly code?: ErrorCode;
  readonly where?: ErrorPlace;
}

/**
 * Returns `value` if it is one of `choices`, compared exactly.
 *
 * @internal
 * @throws ReedplateError `OPTION_UNKNOWN`, or the code asked for, with the nearest choice
 * @example
 * ```ts
 * import { requireOneOf } from '@reedplate/pitch';
 *
 * requireOneOf('draw', ['blow', 'draw'], { what: 'a breath' }); // => 'draw'
 * requireOneOf('drow', ['blow', 'draw'], { what: 'a breath' }); // throws OPTION_UNKNOWN
 * ```
 */
export function requireOneOf<const Choice extends string>(
  value: unknown,
  choices: readonly Choice[],
  { what, code = 'OPTION_UNKNOWN', where = {} }: ChoiceOptions,
): Choice {
  const found = choices.find((choice) => choice === value);
  if (found !== undefined) return found;
  throw new ReedplateError({
    code,
    value,
    expected: `${what}: ${choices.join(', ')}`,
    nearest: typeof value === 'string' ? nearestOf(value, choices) : undefined,
    where,
  });
}

/**
 * Returns `list` if it holds something: an empty list to choose from has no answer.
 *
 * @internal
 * @param what what is listed, for the message: `a harp`
 * @throws ReedplateError `LIST_EMPTY`, or `OPTION_UNKNOWN` for no list
 * @example
 * ```ts
 * import { requireSome } from '@reedplate/pitch';
 *
 * requireSome(['C', 'A'], 'a key'); // => ['C', 'A']
 * requireSome([], 'a key'); // throws LIST_EMPTY
 * ```
 */
export function requireSome<Item>(list: readonly Item[], what: string): readonly Item[] {
  if (Array.isArray(list) && list.length > 0) return list;
  throw new ReedplateError({
    code: Array.isArray(list) ? 'LIST_EMPTY' : 'OPTION_UNKNOWN',
    value: list,
    expected: `${Array.isArray(list) ? '' : 'a list of '}at least ${what}`,
  });
}
