import type { Chart } from '@reedplate/form';
import type { Line } from '@reedplate/line';
import { type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import type { LineSoundings } from '../line/line-notes.js';

/** A line that a handout teaches. */
export interface HandoutLine {
  /** What it is called: `Roots`, `Turnaround`. */
  readonly title: string;
  readonly line: Line;
  /** What sounds each event; default the easiest path. */
  readonly soundings?: LineSoundings;
  /** The line as staff notation, in SVG text; default none. */
  readonly notation?: string;
  /** What to say before it, a paragraph each; default nothing. */
  readonly words?: readonly string[];
  /** The chart that it is played over; default that of the page. */
  readonly chart?: Chart;
}

const HANDOUT_LINE: OptionNames<HandoutLine> = {
  title: true,
  line: true,
  soundings: true,
  notation: true,
  words: true,
  chart: true,
};

/**
 * Returns `lines` if they are lines of a handout; what they hold is read where it is drawn.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`
 */
export function requireLines(lines: unknown): readonly HandoutLine[] {
  if (!Array.isArray(lines)) throw wrong(lines, 'a list of lines');
  return lines.map((line: HandoutLine) => {
    const {
      title,
      notation,
      words = [],
    } = requireOptions(line, HANDOUT_LINE, 'a line of a handout');
    if (!isText(title) || title.trim() === '') throw wrong(title, 'a title of the line');
    if (notation !== undefined && !isText(notation)) throw wrong(notation, 'notation as SVG text');
    if (!Array.isArray(words) || !words.every(isText)) throw wrong(words, 'a list of paragraphs');
    return line;
  });
}

const isText = (value: unknown): value is string => typeof value === 'string';

function wrong(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'OPTION_UNKNOWN', value, expected });
}
