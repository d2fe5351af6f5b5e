import type { Chart } from '@reedplate/form';
import { type Line, makeLine, parseMetre, requireNotes, type TimedNote } from '@reedplate/line';
import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';

/**
 * A line fit to be scored on a chart. Lines come from JSON too, so every value is checked again;
 * one that holds is taken as it is, any other goes through `makeLine`, which says what is wrong or
 * puts the notes in order.
 *
 * @throws ReedplateError `LINE_EMPTY`, `LINE_INVALID`, `METRE_UNKNOWN`
 */
export function checkLine(line: Line, chart: Chart): Line {
  if (typeof line !== 'object' || line === null) throw invalidLine(line, 'a line with notes', {});
  const { notes, ...options } = line;
  const checked = isInOrder(line) ? line : makeLine(notes, options);
  if (checked.metre === chart.metre) return requireNotes(checked);
  const expected = `a line in the metre of the chart, ${chart.metre}`;
  throw invalidLine(checked.metre, expected, { path: 'metre' });
}

function invalidLine(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected, where });
}

const LATEST_TICK = 2 ** 40;

/** Whether makeLine would take the line, and change nothing. */
function isInOrder({ notes, metre, pickup, tempo, title }: Line): boolean {
  // What few lines have is left to makeLine to check.
  if (tempo !== undefined || title !== undefined || !Array.isArray(notes)) return false;
  if (!isTicks(pickup, 0) || pickup >= parseMetre(metre).barTicks) return false;
  let before: TimedNote = { start: 0, duration: 1, pitch: 0 };
  // By index: V8 makes an object of each step of for-of over a frozen list.
  for (let index = 0; index < notes.length; index += 1) {
    const note = notes[index] as TimedNote;
    if (typeof note !== 'object' || note === null || !isAfter(note, before)) return false;
    before = note;
  }
  return true;
}

function isAfter({ start, duration, pitch }: TimedNote, before: TimedNote): boolean {
  if (!isTicks(start, before.start) || !isTicks(duration, 1)) return false;
  if (!Number.isInteger(pitch) || pitch < 0 || pitch > 127) return false;
  return start > before.start || pitch >= before.pitch;
}

function isTicks(value: number, least: number): boolean {
  return Number.isInteger(value) && value >= least && value <= LATEST_TICK;
}
