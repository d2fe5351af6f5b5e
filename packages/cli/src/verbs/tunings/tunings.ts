import { makeHarp, type Reed, reedsOf, TUNINGS, type Tuning } from '@reedplate/layout';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readTuningWord } from '../../shared/read-tuning.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate tunings --json` prints. */
export type TuningsAnswer = readonly Tuning[];

/** Gives `reedplate tunings` its options and what it does. */
export function setUpTunings(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('[tuning...]', 'ids or JSON files of the tunings to show with all reeds')
    .addHelpText('after', examples('reedplate tunings', 'reedplate tunings natural-minor solo-ten'))
    .action((words: readonly string[], options: PrintWords) => {
      const wanted = words.map((word) => readTuningWord(word, terminal));
      const answer: TuningsAnswer = wanted.length === 0 ? TUNINGS : wanted;
      printAnswer(answer, options, terminal, wanted.length === 0 ? showList : showEach);
    });
}

function showList(tunings: TuningsAnswer, { table }: Page): readonly string[] {
  const rows = tunings.map(({ id, holes, label, labelPosition, name }) => [
    id,
    `${holes.length}`,
    `${label} (${sayLabel(labelPosition)})`,
    name,
  ]);
  return table({ head: ['tuning', 'holes', 'named by', 'what it is'], rows });
}

function showEach(tunings: TuningsAnswer, page: Page): readonly string[] {
  return tunings.flatMap((tuning, index) => [
    ...(index === 0 ? [] : ['']),
    ...showTuning(tuning, page),
  ]);
}

function showTuning(tuning: Tuning, { paint, table }: Page): readonly string[] {
  const { id, aliases = [], name, use, source, label, labelPosition, holes } = tuning;
  const reeds = reedsOf(makeHarp(label, { tuning }));
  return [
    paint('heading', `${id}: ${name}`),
    ...(use === '' ? [] : [use]),
    ...(aliases.length === 0 ? [] : [`also: ${aliases.join(', ')}`]),
    `The harp labelled ${label}, which is its ${sayLabel(labelPosition)}-position key:`,
    '',
    ...table({
      head: ['hole', ...holes.map(({ hole }) => `${hole}`)],
      rows: [namesOf('blow', reeds), namesOf('draw', reeds)],
      wrap: 'columns',
    }),
    '',
    paint('aside', `source: ${source}`),
  ];
}

function namesOf(breath: Reed['breath'], reeds: readonly Reed[]): readonly string[] {
  return [breath, ...reeds.filter((reed) => reed.breath === breath).map(({ name }) => name)];
}

function sayLabel(position: 1 | 2): string {
  return position === 1 ? '1st' : '2nd';
}
