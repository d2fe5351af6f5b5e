import type { Line } from '@reedplate/line';
import { itemAt, type KeyName, parseKey } from '@reedplate/pitch';
import { describePick, type HarpPick, type PickOptions, pickHarps } from '@reedplate/position';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type HarpChoiceWords,
  readHarpChoice,
  withHarpChoiceOptions,
} from '../../shared/harp-choice.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { sayPosition } from '../../shared/say-position.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate pick --json` prints: the best harp first. */
export type PickAnswer = readonly HarpPick[];

interface PickWords extends ChartWords, HarpChoiceWords, LevelWords, PartWords, PrintWords {
  readonly line?: string;
  readonly scale: string;
}

const SHOWN = 5;

/** Gives `reedplate pick` its options and what it does. */
export function setUpPick(verb: Command, terminal: Terminal): void {
  withJsonOfHarps(withLevel(withPart(withHarpChoiceOptions(withChartOptions(verb)))))
    .option('--scale <scale>', 'scale played over the song', 'blues')
    .option('--line <file>', 'file of a line that must be playable, in any format')
    .addHelpText(
      'after',
      examples('reedplate pick --key G', 'reedplate pick --key A --own C,D,A --level natural'),
    )
    .action(async (words: PickWords) => {
      const key = parseKey(words.key);
      const answer: PickAnswer = pickHarps(key, await pickOptions(words, terminal));
      printAnswer(answer, words, terminal, (picks, page) => showPicks(key.name, picks, page));
    });
}

async function pickOptions(words: PickWords, terminal: Terminal): Promise<PickOptions> {
  const { scale, line } = words;
  return {
    chart: readChart(words, terminal),
    level: readLevel(words, terminal),
    scale,
    ...readHarpChoice(words, terminal),
    ...(line === undefined ? {} : { line: await readLine(line, words, terminal) }),
  };
}

/** Readers of files are loaded only where there is a file to read. */
async function readLine(file: string, words: PartWords, terminal: Terminal): Promise<Line> {
  const { readPieceFile } = await import('../../shared/piece-file.js');
  return readPieceFile(file, terminal, readPart(words)).line;
}

function showPicks(key: KeyName, picks: PickAnswer, { paint, table }: Page): readonly string[] {
  const shown = picks.slice(0, SHOWN);
  const rows = shown.map((pick, index) => [
    `${index + 1}`,
    sayHarp(pick.harp),
    sayPosition(pick.position),
    `${Math.round(pick.weight * 100)} %`,
  ]);
  const best = itemAt(picks, 0);
  return [
    paint('heading', `harps for a song in ${key}`),
    '',
    ...table({ head: ['', 'harp', 'position', 'suits'], rows }),
    '',
    `Why the ${sayHarp(best.harp)}:`,
    ...describePick(best).map((reason) => `  - ${reason}`),
  ];
}
