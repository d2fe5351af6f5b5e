import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';
import type { Line, TimedNote } from './line.js';
import { makeLine } from './make-line.js';
import type { Metre } from './metre.js';

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
  if (!Array.isArray(notes)) throw invalid(notes, 'a list of notes', { path: 'notes' });
  notes.forEach((note: unknown, index) => {
    requireFields(note, NOTE_FIELDS, `notes[${index}]`);
  });
  // makeLine checks each value; here only the shape is known to be right.
  return makeLine(notes as readonly TimedNote[], options as { readonly metre?: Metre });
}

const LINE_FIELDS: ReadonlySet<string> = new Set(['metre', 'pickup', 'tempo', 'title', 'notes']);
const NOTE_FIELDS: ReadonlySet<string> = new Set(['start', 'duration', 'pitch']);

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'JSON';
    throw new ReedplateError({ code: 'JSON_MALFORMED', value: text, expected: `JSON (${reason})` });
  }
}

function requireFields(
  value: unknown,
  known: ReadonlySet<string>,
  path: string,
): Readonly<Record<string, unknown>> {
  const where = path === '' ? {} : { path };
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    throw invalid(value, `an object with ${[...known].join(', ')}`, where);
  }
  for (const field of Object.keys(value)) {
    if (known.has(field)) continue;
    throw invalid(field, `no field but ${[...known].join(', ')}`, where);
  }
  return value as Readonly<Record<string, unknown>>;
}

function invalid(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected, where });
}
