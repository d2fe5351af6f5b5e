import { type Key, parseKey } from '@reedplate/pitch';
import {
  bestPaths,
  explainPath,
  type LinePaths,
  type NotPlayable,
  PATH_OBJECTIVES,
  type PathExplanation,
  type PathObjective,
} from '@reedplate/playability';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { sayLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { LINE_FILE, readPieceFile } from '../../shared/piece-file.js';
import { type PlayerWords, readPlayer, withPlayerOptions } from '../../shared/player-options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readWholeNumber } from '../../shared/read-words.js';
import { round, tabOf } from '../../shared/say-grips.js';
import { sayHarp } from '../../shared/say-harp.js';
import type { Terminal } from '../../terminal.js';
import { showMoves } from './moves.js';
import { showObstacles } from './obstacles.js';

/**
 * What `reedplate path --json` prints: the best way explained, with `--count` the best ways, or why
 * there is none.
 */
export type PathAnswer = PathExplanation | LinePaths | NotPlayable;

interface PathWords extends HarpWords, PlayerWords, PartWords, PrintWords {
  readonly objective: string;
  readonly count?: string;
  readonly key?: string;
}

/** Gives `reedplate path` its options and what it does. */
export function setUpPath(verb: Command, terminal: Terminal): void {
  withJsonOfHarps(withPart(withPlayerOptions(withHarpOptions(verb))))
    .argument('<line>', LINE_FILE)
    .option(
      '--objective <what>',
      `least effort in total, or first in the worst step: ${PATH_OBJECTIVES.join(', ')}`,
      'total',
    )
    .option('--key <key>', 'key of the song, which spells the notes; else that of the line or harp')
    .option('--count <number>', 'so many of the best ways, in place of why the best is best')
    .addHelpText(
      'after',
      examples(
        'reedplate path take.json --harp C --key G',
        'reedplate path take.json --harp C --count 3',
        'reedplate practice --form basic --key G --harp C --json | jq .line | reedplate path - --harp C',
      ),
    )
    .action((file: string, words: PathWords) => {
      const harp = readHarp(words, terminal);
      const piece = readPieceFile(file, terminal, { harp, ...readPart(words) });
      const key = parseKey(words.key ?? piece.key ?? harp.firstPosition);
      const options = {
        ...readPlayer(words, terminal),
        objective: words.objective as PathObjective,
      };
      const answer: PathAnswer =
        words.count === undefined
          ? explainPath(piece.line, harp, options)
          : bestPaths(piece.line, harp, { ...options, count: readCount(words.count) });
      printAnswer(answer, words, terminal, (found, page) => showPath(found, key, page));
    });
}

const readCount = (word: string): number =>
  readWholeNumber(word, { min: 1, max: 1000, what: 'a number of ways' });

function showPath(answer: PathAnswer, key: Key, page: Page): readonly string[] {
  const { harp, model, level } = headOf(answer);
  const title = `on the ${sayHarp(harp)} (${model}, ${sayLevel(level)})`;
  return [page.paint('heading', title), '', ...showFound(answer, key, page)];
}

function headOf(answer: PathAnswer): Pick<NotPlayable, 'harp' | 'model' | 'level'> {
  if ('path' in answer) return answer.path;
  return 'paths' in answer ? (answer.paths[0] as LinePaths['paths'][number]) : answer;
}

function showFound(answer: PathAnswer, key: Key, page: Page): readonly string[] {
  if ('path' in answer) return showMoves(answer, key, page);
  return 'paths' in answer ? showWays(answer, page) : showObstacles(answer, key, page);
}

function showWays({ paths }: LinePaths, { table }: Page): readonly string[] {
  const rows = paths.map(({ effort, worst, soundings }, at) => [
    `${at + 1}`,
    round(effort),
    round(worst),
    tabOf(soundings),
  ]);
  return table({ head: ['', 'effort', 'worst', 'tab'], rows });
}
