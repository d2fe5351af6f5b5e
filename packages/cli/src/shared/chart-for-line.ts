import { type Chart, type Form, introBars, makeChart } from '@reedplate/form';
import { type Line, parseMetre } from '@reedplate/line';
import { parseKey } from '@reedplate/pitch';
import type { Terminal } from '../terminal.js';
import {
  type FormWords,
  type FrameWords,
  MOST_CHORUSES,
  readFrame,
  readVariedForm,
} from './chart-options.js';

/** Words that name the chart of a line. */
export interface ChartForLineWords extends FormWords, FrameWords {
  readonly key: string;
}

/**
 * The chart that the words name, in the metre of a line.
 *
 * @param choruses default as many as the line has
 */
export function readChartFor(
  line: Line,
  words: ChartForLineWords,
  terminal: Pick<Terminal, 'readText'>,
  choruses?: number,
): Chart {
  const key = parseKey(words.key);
  const form = readVariedForm(words, key, terminal);
  const frame = readFrame(words);
  const { metre, pickup } = line;
  const times = choruses ?? chorusesOf(line, form, frame);
  return makeChart(form, key, { metre, pickup, ...frame, choruses: times });
}

/** Times through the form until the last note begins, at least once. */
function chorusesOf(
  { notes, metre, pickup }: Line,
  form: Form,
  { intro }: ReturnType<typeof readFrame>,
): number {
  const { barTicks } = parseMetre(metre);
  const barsOfIntro = intro === undefined ? 0 : introBars(form, intro).length;
  const firstChorus = pickup + barsOfIntro * barTicks;
  const lastOnset = notes.reduce((last, { start }) => Math.max(last, start), firstChorus);
  const choruses = Math.floor((lastOnset - firstChorus) / (form.bars.length * barTicks)) + 1;
  return Math.min(choruses, MOST_CHORUSES);
}
