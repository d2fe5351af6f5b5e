import { REGISTERS, type Register } from '@reedplate/layout';
import { everyHarp } from '@reedplate/playability';
import type { Command } from 'commander';
import { setCsv } from '../../shared/csv.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { LINE_FILE, readPieceFile } from '../../shared/piece-file.js';
import { type PlayerWords, readPlayer, withPlayerOptions } from '../../shared/player-options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { readTuningList, TUNING_LIST } from '../../shared/read-tuning.js';
import { readList, readNumber, readWholeNumber } from '../../shared/read-words.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type FitEntry, type FitReport, fitReport, fitRows } from './report.js';

interface FitWords extends PlayerWords {
  readonly keys?: string;
  readonly tunings: string;
  readonly registers: string;
  readonly transpose: string;
  readonly count: string;
  readonly csv: boolean;
  readonly json: boolean;
}

/** Gives `reedplate fit` its options and what it does. */
export function setUpFit(verb: Command, terminal: Terminal): void {
  withJson(withPlayerOptions(verb))
    .argument('<line>', LINE_FILE)
    .option('--keys <keys>', 'keys of the harps, apart by commas; all twelve without it')
    .option('--tunings <tunings>', TUNING_LIST, 'standard')
    .option(
      '--registers <registers>',
      `registers apart by commas: ${REGISTERS.join(', ')}`,
      'standard',
    )
    .option('--transpose <semitones>', 'moves of the line, apart by commas: -12,0,12', '0')
    .option('--count <number>', 'how many harps to rank', '10')
    .option('--csv', 'print the ranking as CSV', false)
    .addHelpText(
      'after',
      examples('reedplate fit take.json', 'reedplate fit take.json --tunings all --csv'),
    )
    .action((file: string, words: FitWords) => {
      const report = fitReport(readPieceFile(file, terminal).line, harpsOf(words, terminal), {
        ...readPlayer(words),
        transpositions: readList(words.transpose).map((word) => readNumber(word, 'semitones')),
        count: readWholeNumber(words.count, { min: 1, max: 100_000, what: 'a number of harps' }),
      });
      if (words.csv) terminal.out(setCsv(fitRows(report)));
      else printReport(report, words, terminal, showFit);
    });
}

function harpsOf({ keys, tunings, registers }: FitWords, terminal: Terminal) {
  return everyHarp({
    ...(keys === undefined ? {} : { keys: readList(keys) }),
    tunings: readTuningList(tunings, terminal),
    // A wrong register is refused by makeHarp.
    registers: readList(registers) as readonly Register[],
  });
}

function showFit(report: FitReport, paint: Paint): readonly string[] {
  const [head = '', ...body] = setColumns([HEAD, ...report.harps.map(rowOf)]);
  const { considered, searched, moments, model, level } = report;
  return [
    paint('heading', `harps for ${moments} moments (${model}, ${level})`),
    '',
    paint('heading', head),
    ...body,
    '',
    paint('remark', `${considered} considered, ${searched} searched, the rest proven no better`),
  ];
}

const HEAD = ['', 'harp', 'move', 'plays', 'effort', 'each', 'bends', 'over', 'breath', 'holes'];

function rowOf(entry: FitEntry): readonly string[] {
  const { rank, name, transposition, playableShare, effort, effortPerMoment } = entry;
  return [
    `${rank}`,
    name,
    transposition > 0 ? `+${transposition}` : `${transposition}`,
    `${Math.floor(playableShare * 100)} %`,
    effort.toFixed(1),
    effortPerMoment.toFixed(2),
    `${entry.bends}`,
    `${entry.overbends}`,
    sayBalance(entry.breathBalance),
    `${entry.lowestHole}-${entry.highestHole}`,
  ];
}

function sayBalance(seconds: number): string {
  if (seconds === 0) return 'even';
  return `${Math.abs(seconds).toFixed(1)} s more ${seconds > 0 ? 'draw' : 'blow'}`;
}
