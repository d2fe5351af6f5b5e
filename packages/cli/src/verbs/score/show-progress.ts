import {
  describeFeedback,
  describeVerdict,
  type ProgressReport,
  type TakeProgress,
} from '@reedplate/chord-tone';
import { itemAt } from '@reedplate/pitch';
import type { Paint } from '../../shared/print.js';
import { setColumns } from '../../shared/table.js';

/** One row a take, in their order, and the feedback on the last. */
export function showProgress(
  { takes, progress }: ProgressReport,
  files: readonly string[],
  paint: Paint,
): readonly string[] {
  const rows = takes.map(({ title, verdict }, at) => {
    const { total, gain } = itemAt(progress, at);
    const file = itemAt(files, at);
    const name = title === null ? file : `${file}: ${title}`;
    return [`${at + 1}`, `${Math.round(total)}`, sayGain(gain), name, describeVerdict(verdict)];
  });
  const [head = '', ...body] = setColumns([['take', 'of 100', '', 'file', 'verdict'], ...rows]);
  const { feedback } = itemAt(takes, -1);
  return [
    paint('heading', head),
    ...body,
    ...sayBars(itemAt(progress, -1)),
    ...(feedback.length === 0 ? [] : ['', paint('heading', 'feedback')]),
    ...feedback.map((remark, at) => `  ${at + 1}  ${describeFeedback(remark)}`),
  ];
}

function sayGain(gain: number | null): string {
  if (gain === null) return '';
  return gain < 0 ? `${Math.round(gain)}` : `+${Math.round(gain)}`;
}

function sayBars({ betterBars, worseBars }: TakeProgress): readonly string[] {
  const said = [
    ...(betterBars.length === 0 ? [] : [`better in bars ${betterBars.join(', ')}`]),
    ...(worseBars.length === 0 ? [] : [`worse in bars ${worseBars.join(', ')}`]),
  ];
  return said.length === 0 ? [] : ['', `The last take is ${said.join(', ')}.`];
}
