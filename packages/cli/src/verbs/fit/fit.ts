import { harpName, REGISTERS, type Register } from '@reedplate/layout';
import { everyHarp, type FitRanking, fitHarps, type HarpFit } from '@reedplate/playability';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { setCsv } from '../../shared/csv.js';
import { examples } from '../../shared/examples.js';
import { sayLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { LINE_FILE, readPieceFile } from '../../shared/piece-file.js';
import { type PlayerWords, readPlayer, withPlayerOptions } from '../../shared/player-options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readTuningList, TUNING_LIST } from '../../shared/read-tuning.js';
import { readList, readNumber, readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';
import { fitRows } from './rows.js';

/** What `reedplate fit --json` prints. */
export type FitAnswer = FitRanking;

interface FitWords extends PlayerWords, PartWords, PrintWords {
  readonly keys?: string;
  readonly tunings: string;
  readonly registers: string;
  readonly transpose: string;
  readonly count: string;
  readonly csv: boolean;
}

/** Gives `reedplate fit` its options and what it does. */
export function setUpFit(verb: Command, terminal: Terminal): void {
  withJsonOfHarps(withPart(withPlayerOptions(verb)))
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
      const { line } = readPieceFile(file, terminal, readPart(words));
      const answer: FitAnswer = fitHarps(line, harpsOf(words, terminal), {
        ...readPlayer(words, terminal),
        transpositions: readList(words.transpose).map((word) => readNumber(word, 'semitones')),
        count: readWholeNumber(words.count, { min: 1, max: 100_000, what: 'a number of harps' }),
      });
      if (words.csv) terminal.out(setCsv(fitRows(answer)));
      else printAnswer(answer, words, terminal, showFit);
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

function showFit(ranking: FitAnswer, { paint, table }: Page): readonly string[] {
  const { considered, searched, events, model, level, harps } = ranking;
  return [
    paint('heading', `harps for ${count(events, 'event')} (${model}, ${sayLevel(level)})`),
    '',
    ...table({ head: HEAD, rows: harps.map(rowOf) }),
    '',
    paint('aside', `${considered} considered, ${searched} searched, the rest proven no better`),
  ];
}

const HEAD = ['', 'harp', 'move', 'plays', 'effort', 'each', 'bends', 'over', 'breath', 'holes'];

function rowOf(fit: HarpFit, at: number): readonly string[] {
  const { harp, transposition, playableShare, effort, effortPerEvent } = fit;
  return [
    `${at + 1}`,
    harpName(harp),
    transposition > 0 ? `+${transposition}` : `${transposition}`,
    `${Math.floor(playableShare * 100)} %`,
    effort.toFixed(1),
    effortPerEvent.toFixed(2),
    `${fit.bends}`,
    `${fit.overbends}`,
    sayBalance(fit.breathBalance),
    `${fit.lowestHole}-${fit.highestHole}`,
  ];
}

function sayBalance(seconds: number): string {
  if (seconds === 0) return 'even';
  return `${Math.abs(seconds).toFixed(1)} s more ${seconds > 0 ? 'draw' : 'blow'}`;
}
