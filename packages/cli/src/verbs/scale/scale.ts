import { type Harp, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { type Key, ReedplateError } from '@reedplate/pitch';
import { type RunNote, type ScaleMap, scaleMap, scaleRun } from '@reedplate/position';
import { formatSounding } from '@reedplate/tab';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import {
  readSongKey,
  type SongKeyWords,
  withSongKeyOptions,
} from '../../shared/song-key-options.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate scale --json` prints: where the scale lies or, with `--run`, the run. */
export type ScaleAnswer = ScaleMap | readonly RunNote[];

interface ScaleWords extends HarpWords, LevelWords, SongKeyWords, PrintWords {
  readonly scale: string;
  readonly run: boolean;
}

/** Gives `reedplate scale` its options and what it does. */
export function setUpScale(verb: Command, terminal: Terminal): void {
  withJson(withLevel(withSongKeyOptions(withHarpOptions(verb))))
    .option('--scale <scale>', 'scale by name: blues, major pentatonic, mixolydian …', 'blues')
    .option('--run', 'the run up and down alone', false)
    .addHelpText(
      'after',
      examples(
        'reedplate scale --harp C --key G',
        'reedplate scale --harp C --position 3 --scale dorian',
        'reedplate scale --harp C --key G --run',
      ),
    )
    .action((words: ScaleWords) => {
      const harp = readHarp(words, terminal);
      const key = requireSongKey(words, harp);
      const options = { level: readLevel(words, terminal) };
      const run = scaleRun(harp, key, words.scale, options);
      if (words.run) printAnswer<ScaleAnswer>(run, words, terminal, () => [sayRun(run)]);
      else {
        const map = scaleMap(harp, key, words.scale, options);
        printAnswer<ScaleAnswer>(map, words, terminal, (_, page) =>
          showScale(harp, map, run, page),
        );
      }
    });
}

function requireSongKey(words: SongKeyWords, harp: Harp): Key {
  const key = readSongKey(words, harp);
  if (key !== undefined) return key;
  throw new ReedplateError({ code: 'USAGE', value: 'scale', expected: '--key or --position' });
}

const BEYOND = 'in brackets: cannot be sounded at this level';

function showScale(
  harp: Harp,
  { key, position, scale, notes, levels }: ScaleMap,
  run: readonly RunNote[],
  { paint, table }: Page,
): readonly string[] {
  const rows = notes.map(({ degree, name, soundings }) => [
    degree,
    name,
    soundings.map((sounding) => formatSounding(sounding)).join('  ') || '(none)',
  ]);
  const coverage = TECHNIQUE_LEVELS.map(
    (level) => `${Math.floor(levels[level].coverage * 100)} % with ${level}`,
  );
  return [
    paint('heading', `${scale} in ${key} on ${sayHarp(harp)}, position ${position}`),
    '',
    ...table({ head: ['degree', 'note', 'tab'], rows }),
    '',
    `up and down: ${sayRun(run)}`,
    ...(notes.some(({ soundings }) => soundings.length === 0) ? [BEYOND] : []),
    '',
    paint('aside', coverage.join(', ')),
  ];
}

function sayRun(run: readonly RunNote[]): string {
  return run
    .map(({ sounding, name }) => (sounding === null ? `(${name})` : formatSounding(sounding)))
    .join(' ');
}
