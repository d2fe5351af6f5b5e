import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { parseKey } from '@reedplate/pitch';
import type { PickOptions } from '@reedplate/position';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type HarpChoiceWords,
  readHarpChoice,
  withHarpChoiceOptions,
} from '../../shared/harp-choice.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type PickEntry, type PickReport, pickReport } from './report.js';

interface PickWords extends ChartWords, HarpChoiceWords {
  readonly line?: string;
  readonly level: string;
  readonly scale: string;
  readonly json: boolean;
}

const SHOWN = 5;

/** Gives `reedplate pick` its options and what it does. */
export function setUpPick(verb: Command, terminal: Terminal): void {
  withJson(withHarpChoiceOptions(withChartOptions(verb)))
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option('--scale <scale>', 'scale played over the song', 'blues')
    .option('--line <file>', 'file of a line that must be playable, in any format')
    .addHelpText(
      'after',
      examples('reedplate pick --key G', 'reedplate pick --key A --own C,D,A --level natural'),
    )
    .action(async (words: PickWords) => {
      const report = pickReport(parseKey(words.key), await pickOptions(words, terminal));
      printReport(report, words, terminal, showPicks);
    });
}

async function pickOptions(words: PickWords, terminal: Terminal): Promise<PickOptions> {
  const { level, scale, line } = words;
  return {
    chart: readChart(words, terminal),
    // A wrong level is refused by pickHarps.
    level: level as TechniqueLevel,
    scale,
    ...readHarpChoice(words, terminal),
    ...(line === undefined ? {} : { line: await readLine(line, terminal) }),
  };
}

/** Readers of files are loaded only where there is a file to read. */
async function readLine(file: string, terminal: Terminal): Promise<Line> {
  const { readPieceFile } = await import('../../shared/piece-file.js');
  return readPieceFile(file, terminal).line;
}

function showPicks({ key, picks }: PickReport, paint: Paint): readonly string[] {
  const shown = picks.slice(0, SHOWN);
  const [head = '', ...body] = setColumns([
    ['', 'harp', 'position', 'suits'],
    ...shown.map((pick, index) => [
      `${index + 1}`,
      sayHarp(pick.harp),
      sayPosition(pick),
      `${Math.round(pick.weight * 100)} %`,
    ]),
  ]);
  const [best] = shown;
  return [
    paint('heading', `harps for a song in ${key}`),
    '',
    paint('heading', head),
    ...body,
    '',
    ...(best === undefined ? [] : [`Why the ${sayHarp(best.harp)}:`]),
    ...(best?.reasons ?? []).map((reason) => `  - ${reason}`),
  ];
}

function sayPosition({ position, positionName }: PickEntry): string {
  return positionName === '' ? `${position}` : `${position} (${positionName})`;
}
