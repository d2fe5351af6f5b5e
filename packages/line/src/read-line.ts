import { readJson, requireFields } from '@reedplate/pitch';
import { invalidLine } from './invalid-line.js';
import type { Line, TimedNote } from './line.js';
import { type LineOptions, makeLine } from './make-line.js';

/**
 * Reads a line from parsed JSON, or from JSON text: the shape of {@link Line}, with all but `notes`
 * optional: `metre` is `4/4` and `pickup` 0 where they are not given. A field of another name is an
 * error, so that a slip such as `pickUp` is not lost.
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
  const reading = { code: 'LINE_INVALID' } as const;
  const { notes, ...options } = requireFields(readJson(json), LINE_FIELDS, reading);
  if (!Array.isArray(notes)) throw invalidLine(notes, 'a list of notes', { path: 'notes' });
  for (const [index, note] of notes.entries()) {
    const path = `notes[${index}]`;
    const { curve } = requireFields(note, NOTE_FIELDS, { ...reading, path });
    requireListFields(curve, POINT_FIELDS, `${path}.curve`);
  }
  requireListFields(options.tempoChanges, CHANGE_FIELDS, 'tempoChanges');
  // makeLine checks each value; here only the shape is known to be right.
  return makeLine(notes as readonly TimedNote[], options as LineOptions);
}

const LINE_FIELDS = [
  'metre',
  'pickup',
  'countIn',
  'tempo',
  'tempoChanges',
  'title',
  'notes',
] as const;
const NOTE_FIELDS = [
  'start',
  'duration',
  'pitch',
  'velocity',
  'accent',
  'grace',
  'cents',
  'curve',
  'confidence',
] as const;
const POINT_FIELDS = ['at', 'cents'] as const;
const CHANGE_FIELDS = ['start', 'tempo'] as const;

/** That what is no list is none, makeLine says. */
function requireListFields(list: unknown, known: readonly string[], path: string): void {
  if (!Array.isArray(list)) return;
  for (const [index, item] of list.entries()) {
    requireFields(item, known, { code: 'LINE_INVALID', path: `${path}[${index}]` });
  }
}
