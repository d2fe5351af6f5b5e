import { type Chart, FEELS, type Feel, makeChart } from '@reedplate/form';
import { makeBacking } from '@reedplate/interchange';
import { parseKey, requireOneOf } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import { type ChartWords, readVariedForm, withChartOptions, withJson } from '../command/options.js';
import { readPieceFile, writePieceBytes } from '../command/piece-file.js';
import { type Paint, printReport } from '../command/print.js';
import { readWholeNumber } from '../command/read-words.js';
import type { Terminal } from '../command/terminal.js';
import { type BackingReport, backingReport } from '../reports/backing.js';

interface BackingWords extends ChartWords {
  readonly tempo: string;
  readonly feel?: string;
  readonly choruses: string;
  readonly countIn: string;
  readonly ending: boolean;
  readonly line?: string;
  readonly output: string;
  readonly json: boolean;
}

/** Adds `reedplate backing`. */
export function addBacking(program: Command, terminal: Terminal): void {
  withJson(withChartOptions(program.command('backing')))
    .requiredOption('-o, --output <file>', 'file to write: .mid, .musicxml or .abc')
    .description('a band to play with: bass, chords and drums over a form')
    .option('--tempo <number>', 'felt beats a minute', '96')
    .option('--feel <feel>', `feel: ${FEELS.join(', ')}; that of the form without it`)
    .option('--choruses <number>', 'times through the form', '4')
    .option('--count-in <bars>', 'bars counted in', '1')
    .option('--no-ending', 'leave out the bar that ends it')
    .option('--line <file>', 'a line played on top, in any format')
    .addHelpText(
      'after',
      examples(
        'reedplate backing --form quick-change --key G --tempo 100 --choruses 6 -o blues-in-g.mid',
      ),
    )
    .action((words: BackingWords) => {
      const backing = makeBacking(readBackingChart(words, terminal), readOptions(words, terminal));
      const bytes = writePieceBytes(backing, words.output);
      terminal.writeBytes(words.output, bytes);
      if (words.output !== '-') printReport(backingReport(backing), words, terminal, showBacking);
    });
}

function readBackingChart(words: BackingWords, terminal: Terminal): Chart {
  const { feel, tempo, choruses } = words;
  return makeChart(readVariedForm(words, terminal), {
    key: parseKey(words.key),
    tempo: readWholeNumber(tempo, { min: 1, max: 1000, what: 'felt beats a minute' }),
    choruses: readWholeNumber(choruses, { min: 1, max: 1000, what: 'choruses' }),
    ...(feel === undefined
      ? {}
      : { feel: requireOneOf(feel, FEELS, { what: 'a feel' }) satisfies Feel }),
  });
}

function readOptions({ countIn, ending, line }: BackingWords, terminal: Terminal) {
  return {
    countIn: readWholeNumber(countIn, { min: 0, max: 8, what: 'bars counted in' }),
    ending,
    ...(line === undefined ? {} : { line: readPieceFile(line, terminal).line }),
  };
}

function showBacking(report: BackingReport, paint: Paint): readonly string[] {
  const { form, key, metre, feel, tempo, choruses, bars, seconds, parts } = report;
  const minutes = `${Math.floor(seconds / 60)}:${`${Math.floor(seconds % 60)}`.padStart(2, '0')}`;
  return [
    paint('heading', `${form} in ${key}, ${metre}, ${feel}, at ${tempo}`),
    `${choruses} choruses, ${bars} bars, ${minutes}: ${parts.map(({ name }) => name).join(', ')}`,
  ];
}
