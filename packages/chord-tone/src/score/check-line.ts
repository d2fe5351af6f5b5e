import type { Chart } from '@reedplate/form';
import { type Line, makeLine, requireNotes } from '@reedplate/line';
import { type ErrorPlace, ReedplateError } from '@reedplate/pitch';

/**
 * A line fit to be scored on a chart. Lines come from JSON too, so every value is checked again by
 * `makeLine`, which says what is wrong and puts the notes in order.
 *
 * @throws ReedplateError `LINE_EMPTY`, `LINE_INVALID`, `METRE_UNKNOWN`
 */
export function checkLine(line: Line, chart: Chart): Line {
  if (typeof line !== 'object' || line === null) throw invalidLine(line, 'a line with notes', {});
  const { notes, ...options } = line;
  const checked = makeLine(notes, options);
  if (checked.metre === chart.metre) return requireNotes(checked);
  const expected = `a line in the metre of the chart, ${chart.metre}`;
  throw invalidLine(checked.metre, expected, { path: 'metre' });
}

function invalidLine(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected, where });
}
