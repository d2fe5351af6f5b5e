import { ReedplateError, requireOneOf } from '@reedplate/pitch';
import { invalidLine } from './invalid-line.js';
import type { Line, TimedNote } from './line.js';
import { type LineOptions, makeLine } from './make-line.js';

/**
 * Reads a line from parsed JSON, or from JSON text: the shape of {@link Line}, with `metre`
 * (default `4/4`), `pickup` (default 0), `tempo` and `title` optional. A field of another name
 * is an error, so that a slip such as `pickUp` is not lost.
 *
 * @throws ReedplateError `JSON_MALFORMED`, `LINE_INVALID` or `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { readLine } from '@reedplate/line';
 *
 * readLine('{"notes":[{"start":0,"duration":960,"pitch":67}]}').notes.length; // => 1
 * readLine('{"notes":'); // throws JSON_MALFORMED
 * readLine({ notes: [], pickUp: 0 }); // throws LINE_INVALID
 * ```
 */
export function readLine(json: unknown): Line {
  const value = typeof json === 'string' ? parseJson(json) : json;
  const { notes, ...options } = requireFields(value, LINE_FIELDS, '');
  if (!Array.isArray(notes)) throw invalidLine(notes, 'a list of notes', { path: 'notes' });
  for (const [index, note] of notes.entries()) requireFields(note, NOTE_FIELDS, `notes[${index}]`);
  // makeLine checks each value; here only the shape is known to be right.
  return makeLine(notes as readonly TimedNote[], options as LineOptions);
}

const LINE_FIELDS = ['metre', 'pickup', 'tempo', 'title', 'notes'] as const;
const NOTE_FIELDS = ['start', 'duration', 'pitch'] as const;

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? ` (${error.message})` : '';
    throw new ReedplateError({ code: 'JSON_MALFORMED', value: text, expected: `JSON${reason}` });
  }
}

function requireFields(
  value: unknown,
  known: readonly string[],
  path: string,
): Readonly<Record<string, unknown>> {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    const where = path === '' ? {} : { path };
    throw invalidLine(value, `an object with ${known.join(', ')}`, where);
  }
  for (const field of Object.keys(value)) {
    const where = { path: path === '' ? field : `${path}.${field}` };
    requireOneOf(field, known, { what: 'one of the fields', code: 'LINE_INVALID', where });
  }
  return value as Readonly<Record<string, unknown>>;
}
