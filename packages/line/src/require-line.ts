import { ReedplateError, requireShape } from '@reedplate/pitch';
import { checkNote } from './check-note.js';
import { checkTempos } from './check-tempo.js';
import type { Line } from './line.js';
import { checkLead } from './make-line.js';
import { parseMetre } from './metre.js';

/**
 * The line itself, if it is one: what every function that takes a line asks first. A line may come
 * from JSON, so each note is looked at.
 *
 * @internal
 * @throws ReedplateError `LINE_INVALID` with `where.path`, or `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { makeLine, requireLine } from '@reedplate/line';
 *
 * requireLine(makeLine([])).metre; // => '4/4'
 * requireLine([] as never); // throws LINE_INVALID
 * ```
 */
export function requireLine(line: Line): Line {
  const what = 'a line, as makeLine gives it';
  const { notes, metre } = requireShape(line, { notes: 'list' }, { what, code: 'LINE_INVALID' });
  checkLead(line, parseMetre(metre).barTicks);
  checkTempos(line);
  for (const [index, note] of notes.entries()) checkNote(note, index);
  return line;
}

/**
 * The line itself, if it holds a note.
 *
 * @internal
 * @throws ReedplateError `LINE_EMPTY`, or as {@link requireLine}
 * @example
 * ```ts
 * import { makeLine, requireNotes } from '@reedplate/line';
 *
 * requireNotes(makeLine([{ start: 0, duration: 960, pitch: 67 }])).notes.length; // => 1
 * requireNotes(makeLine([])); // throws LINE_EMPTY
 * ```
 */
export function requireNotes(line: Line): Line {
  if (requireLine(line).notes.length > 0) return line;
  throw new ReedplateError({
    code: 'LINE_EMPTY',
    value: line,
    expected: 'at least one note',
  });
}
