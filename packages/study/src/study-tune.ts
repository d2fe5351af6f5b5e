import { type Line, readLine } from '@reedplate/line';
import { type KeyName, parseKey, ReedplateError } from '@reedplate/pitch';

/** A tune of a study: one line of its input. */
export interface StudyTune {
  /** Key of the tune, from which positions are counted. */
  readonly key: KeyName;
  readonly line: Line;
  /** Copied to the result: text or a number. */
  readonly id?: string | number;
  /** What it belongs with, such as a tune and its variants: comparisons draw a family together. */
  readonly family?: string;
}

/**
 * Reads a tune of a study from a line of its input: JSON with `key`, `line` and, where wanted, `id`.
 *
 * @throws ReedplateError `JSON_MALFORMED`, `STUDY_INVALID`, `KEY_UNKNOWN`, `LINE_INVALID`, `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { readStudyTune } from '@reedplate/study';
 *
 * readStudyTune('{"key":"G","line":{"notes":[{"start":0,"duration":960,"pitch":67}]}}').key; // => 'G'
 * readStudyTune('{"key":"G"}'); // throws STUDY_INVALID
 * ```
 */
export function readStudyTune(text: string): StudyTune {
  const value = parseJson(text);
  if (typeof value !== 'object' || value === null || !('line' in value)) {
    throw invalidTune(text, 'an object with key and line');
  }
  const { key, line, family } = value as { key?: string; line: unknown; family?: unknown };
  const id = idOf(value);
  if (key === undefined || key === null) {
    throw invalidTune(id ?? text, 'a key, from which positions are counted');
  }
  return Object.freeze({
    key: parseKey(key).name,
    line: readLine(line),
    ...(id === undefined ? {} : { id }),
    ...(typeof family === 'string' ? { family } : {}),
  });
}

/** The id of what may be a tune, where it has one. */
function idOf(value: unknown): string | number | undefined {
  if (typeof value !== 'object' || value === null || !('id' in value)) return undefined;
  const { id } = value;
  return typeof id === 'string' || typeof id === 'number' ? id : undefined;
}

function invalidTune(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'STUDY_INVALID', value, expected });
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new ReedplateError({ code: 'JSON_MALFORMED', value: text, expected: 'one JSON value' });
  }
}

/** The id in the text of what may be no tune. */
export function idIn(text: string): string | number | undefined {
  try {
    return idOf(JSON.parse(text));
  } catch {
    return undefined;
  }
}
