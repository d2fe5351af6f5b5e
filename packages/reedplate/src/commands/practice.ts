import { PRACTICE_KINDS, type PracticeKind } from '@reedplate/chord-tone';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import {
  type ChartWords,
  type HarpWords,
  readChart,
  readHarp,
  withChartOptions,
  withHarpOptions,
  withJson,
} from '../command/options.js';
import { type Paint, printReport } from '../command/print.js';
import { setColumns } from '../command/table.js';
import type { Terminal } from '../command/terminal.js';
import { type PracticeReport, practiceReport } from '../reports/practice.js';
import { sayHarp } from './say-harp.js';

interface PracticeWords extends ChartWords, HarpWords {
  readonly kind: string;
  readonly level: string;
  readonly json: boolean;
}

/** Adds `reedplate practice`. */
export function addPractice(program: Command, terminal: Terminal): void {
  withJson(withHarpOptions(withChartOptions(program.command('practice'))))
    .description('a line to practise: one tab a chord, held until the next')
    .option('--kind <kind>', `what to practise: ${PRACTICE_KINDS.join(', ')}`, 'roots')
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .addHelpText(
      'after',
      examples('reedplate practice --form basic --key G --harp C --kind guide-tones'),
    )
    .action((words: PracticeWords) => {
      const options = { kind: words.kind as PracticeKind, level: words.level as TechniqueLevel };
      const report = practiceReport(readChart(words, terminal), readHarp(words), options);
      printReport(report, words, terminal, showPractice);
    });
}

function showPractice(report: PracticeReport, paint: Paint): readonly string[] {
  const { kind, form, key, harp, moves } = report;
  const rows = moves.map(({ bar, beat, numeral, chord, tab, notes, degrees }) => [
    beat === 1 ? `${bar}` : `${bar}:${beat}`,
    numeral ?? '',
    chord,
    tab,
    notes.join(' '),
    degrees.join(' '),
  ]);
  const [head = '', ...body] = setColumns([
    ['bar', '', 'chord', 'tab', 'notes', 'degrees'],
    ...rows,
  ]);
  return [
    paint('heading', `${kind} of ${form} in ${key} on a ${sayHarp(harp)}`),
    '',
    paint('heading', head),
    ...body,
    '',
    paint('remark', BREATH_CAUTION),
  ];
}

/** The one caution of this verb: long notes on one breath can make a player dizzy. */
const BREATH_CAUTION =
  'Play softly and rest between choruses; stop if you feel dizzy from long blows or draws.';
