import type { Chart, ChordSpan } from '@reedplate/form';
import { count } from '../../shared/count.js';
import type { Page } from '../../shared/print.js';
import { titleOfChart } from '../../shared/say-chart.js';
import { sayDifference } from '../../shared/say-difference.js';
import { sayHarp } from '../../shared/say-harp.js';
import { sayPosition } from '../../shared/say-position.js';
import type { BandAnswer } from './listen-to-band.js';

const BARS_OF_LINE = 4;

/** What a band plays, set for people. */
export function showBand(answer: BandAnswer, page: Page): readonly string[] {
  const { chart, alike } = answer;
  const { paint, table } = page;
  const others = alike.map(({ name, key }) => `${name} in ${key}`).join('; ');
  return [
    paint('heading', titleOf(answer)),
    sayBars(answer),
    saySureness(answer),
    ...(others === '' ? [] : [`fits as well, to the ear: ${others}`]),
    '',
    ...table({ head: headOf(answer), rows: linesOf(chart, answer) }),
    ...showDifferences(answer, page),
    '',
    ...table({
      head: ['harp', 'position', 'suits'],
      rows: answer.harps.map(({ harp, position, weight }) => [
        sayHarp(harp),
        sayPosition(position),
        `${Math.round(weight * 100)} %`,
      ]),
    }),
  ];
}

function titleOf({ form, chart }: BandAnswer): string {
  if (form !== null) return titleOfChart(chart);
  return `no form of the catalogue fits; chords in ${chart.key}, ${chart.metre}`;
}

function sayBars(answer: BandAnswer): string {
  const bars = count(answer.chart.bars, 'bar');
  if (!('beats' in answer)) return `${bars}, the first at tick ${answer.start}`;
  const { tempo, reference, cents, beats } = answer;
  const tuned = `A4 at ${reference.toFixed(1)} Hz (${cents < 0 ? '' : '+'}${cents.toFixed(0)} cents)`;
  return `${bars} from second ${(beats[0] ?? 0).toFixed(2)}, ${tempo.toFixed(1)} beats a minute, ${tuned}`;
}

function saySureness({ confidence }: BandAnswer): string {
  const { form, key, downbeat, tempo } = confidence;
  const parts = Object.entries({ form, key, 'bar lines': downbeat, tempo });
  const sure = parts.map(([name, chance]) => `${name} ${Math.round(100 * chance)} %`).join(', ');
  const least = Math.min(form, key, downbeat, tempo);
  return `sure by: ${sure}${least < UNSURE ? '; listen for yourself' : ''}`;
}

/** Below this chance a person should hear for themselves. */
const UNSURE = 0.8;

function headOf(answer: BandAnswer): readonly string[] {
  return [...('beats' in answer ? ['second'] : []), 'bar', 'of form', 'chords'];
}

/** Four bars to a line, a new line with each chorus. */
function linesOf(chart: Chart, answer: BandAnswer): readonly (readonly string[])[] {
  const bars = Array.from({ length: chart.bars }, (_, at) =>
    chart.spans.filter(({ bar }) => bar === at + 1),
  );
  const lines: (readonly ChordSpan[])[][] = [];
  for (const bar of bars) {
    const line = lines.at(-1);
    const isSameChorus = line?.[0]?.[0]?.chorus === bar[0]?.chorus;
    if (line === undefined || line.length === BARS_OF_LINE || !isSameChorus) lines.push([bar]);
    else line.push(bar);
  }
  return lines.map((line) => {
    const [first] = line[0] ?? [];
    const second = 'beats' in answer ? [secondOfBar(answer, first?.bar ?? 1)] : [];
    return [
      ...second,
      `${first?.bar ?? ''}`,
      answer.form === null ? '' : `${first?.barOfForm ?? ''}`,
      `| ${line.map((bar) => bar.map(({ chord }) => chord?.symbol ?? 'N.C.').join(' ')).join(' | ')} |`,
    ];
  });
}

function secondOfBar(answer: BandAnswer, bar: number): string {
  return 'beats' in answer ? (answer.bars[bar - 1]?.start.toFixed(2) ?? '') : '';
}

function showDifferences({ differences, form }: BandAnswer, { table }: Page): readonly string[] {
  if (differences.length === 0 || form === null) return [];
  return [
    '',
    ...table({ head: ['bar', 'played', form.name, ''], rows: differences.map(sayDifference) }),
  ];
}
