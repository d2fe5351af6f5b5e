import type { Chart } from '@reedplate/form';
import { type Harp, harpName } from '@reedplate/layout';
import { positionByNumber, positionOf } from '@reedplate/position';
import type { ChartCell, ChartContent, ChartSection } from './chart-layout.js';

/** The title of a chart where the caller gives none. */
export function chartTitle({ form, key }: Chart, harp: Harp | undefined): string {
  const words = form.replaceAll('-', ' ').slice(0, 80);
  const name = words.charAt(0).toUpperCase() + words.slice(1);
  return harp === undefined ? `${name} in ${key}` : `${name} in ${key}, ${harpInWords(harp, key)}`;
}

/** A harp and the position it plays a song in. */
export function harpInWords(harp: Harp, key: Chart['key']): string {
  return `${harpName(harp)} harp in ${positionByNumber(positionOf(harp, key)).ordinal} position`;
}

/** What a chart shows, in a sentence or two. */
export function describeChart(chart: Chart, { sections }: ChartContent): string {
  const bars = sections.map(({ cells, times, name }) => {
    const often = times > 1 ? `, ${times} times` : '';
    return sections.length > 1
      ? `${name}: ${cells.length} bars${often}`
      : `${cells.length} bars${often}`;
  });
  const { metre, feel, tempo } = chart;
  const how = [metre, feel, ...(tempo === undefined ? [] : [`${tempo} beats a minute`])].join(', ');
  return `Chords by bar in ${chart.key}; ${how}. ${bars.join('; ')}.`;
}

/** All that a chart shows: a line a row of four bars. */
export function chartInText(title: string, { sections }: ChartContent): string {
  const rows = sections.flatMap((section) => [
    ...(sections.length > 1 || section.times > 1 ? [headOf(section)] : []),
    ...rowsOf(section),
  ]);
  return [title, ...rows].join('\n');
}

function headOf({ name, times }: ChartSection): string {
  return times > 1 ? `${name}, ${times} times:` : `${name}:`;
}

function rowsOf({ cells, turnaround }: ChartSection): readonly string[] {
  const rows: string[] = [];
  for (let at = 0; at < cells.length; at += 4) {
    const bars = cells.slice(at, at + 4).map(cellInText);
    const holds = turnaround !== undefined && turnaround >= at && turnaround < at + 4;
    const aside = holds ? ` (turnaround from bar ${turnaround + 1})` : '';
    rows.push(`bars ${at + 1} to ${at + bars.length}: ${bars.join(' | ')}${aside}`);
  }
  return rows;
}

function cellInText({ chords }: ChartCell): string {
  return chords
    .map(({ numeralText, nameText, holesText }) =>
      [numeralText, nameText, holesText === '' ? '' : `[${holesText}]`]
        .filter((part) => part !== '')
        .join(' '),
    )
    .join(', ');
}
