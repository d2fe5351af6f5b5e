import type { Chart } from '@reedplate/form';
import type { WrittenBar } from './write-bars.js';

const BARS_IN_SYSTEM = 4;

/** Whether a line of music begins with a bar: four a line, as lead sheets have them, a pickup before the first. */
export function startsSystem({ number }: Pick<WrittenBar, 'number'>): boolean {
  return number > 1 && (number - 1) % BARS_IN_SYSTEM === 0;
}

/** Whether an introduction or a chorus ends with a bar: a double bar line follows. */
export function endsSection(
  { number }: Pick<WrittenBar, 'number'>,
  chart: Chart | undefined,
): boolean {
  if (chart === undefined || number < 1) return false;
  const { bars, choruses, intro = 0 } = chart;
  const inChorus = number - intro;
  return inChorus >= 0 && inChorus % ((bars - intro) / choruses) === 0;
}
