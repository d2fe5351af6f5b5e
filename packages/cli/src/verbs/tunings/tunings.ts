import { TUNINGS } from '@reedplate/layout';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { readTuningWord } from '../../shared/read-tuning.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type TuningEntry, type TuningsReport, tuningsReport } from './report.js';

/** Gives `reedplate tunings` its options and what it does. */
export function setUpTunings(verb: Command, terminal: Terminal): void {
  withJson(verb)
    .argument('[tuning...]', 'ids or JSON files of the tunings to show with all reeds')
    .addHelpText('after', examples('reedplate tunings', 'reedplate tunings natural-minor solo-ten'))
    .action((words: readonly string[], options: { readonly json: boolean }) => {
      const wanted = words.map((word) => readTuningWord(word, terminal));
      const report = tuningsReport(wanted.length === 0 ? TUNINGS : wanted);
      printReport(report, options, terminal, wanted.length === 0 ? showList : showEach);
    });
}

function showList({ tunings }: TuningsReport, paint: Paint): readonly string[] {
  const [head = '', ...body] = setColumns([
    ['tuning', 'holes', 'named by', 'what it is'],
    ...tunings.map(({ id, holes, label, labelPosition, name }) => [
      id,
      `${holes}`,
      `${label} (${sayLabel(labelPosition)})`,
      name,
    ]),
  ]);
  return [paint('heading', head), ...body];
}

function showEach({ tunings }: TuningsReport, paint: Paint): readonly string[] {
  return tunings.flatMap((tuning, index) => [
    ...(index === 0 ? [] : ['']),
    ...showTuning(tuning, paint),
  ]);
}

function showTuning(tuning: TuningEntry, paint: Paint): readonly string[] {
  const { id, name, use, source, label, labelPosition, blow, draw } = tuning;
  const [head = '', ...body] = setColumns([
    ['hole', ...blow.map((_, index) => `${index + 1}`)],
    ['blow', ...blow],
    ['draw', ...draw],
  ]);
  return [
    paint('heading', `${id}: ${name}`),
    ...(use === '' ? [] : [use]),
    `The harp labelled ${label}, which is its ${sayLabel(labelPosition)}-position key:`,
    '',
    paint('heading', head),
    ...body,
    '',
    paint('remark', `source: ${source}`),
  ];
}

function sayLabel(position: 1 | 2): string {
  return position === 1 ? '1st' : '2nd';
}
