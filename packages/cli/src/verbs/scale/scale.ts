import { type Harp, TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { type Key, ReedplateError } from '@reedplate/pitch';
import type { Command } from 'commander';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import {
  readSongKey,
  type SongKeyWords,
  withSongKeyOptions,
} from '../../shared/song-key-options.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type ScaleReport, scaleReport } from './report.js';

interface ScaleWords extends HarpWords, SongKeyWords {
  readonly scale: string;
  readonly level: string;
  readonly json: boolean;
}

/** Gives `reedplate scale` its options and what it does. */
export function setUpScale(verb: Command, terminal: Terminal): void {
  withJson(withSongKeyOptions(withHarpOptions(verb)))
    .option('--scale <scale>', 'scale by name: blues, major pentatonic, mixolydian …', 'blues')
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .addHelpText(
      'after',
      examples(
        'reedplate scale --harp C --key G',
        'reedplate scale --harp C --position 3 --scale dorian',
      ),
    )
    .action((words: ScaleWords) => {
      // A wrong level is refused by scaleMap.
      const level = words.level as TechniqueLevel;
      const harp = readHarp(words, terminal);
      const report = scaleReport(harp, requireSongKey(words, harp), words.scale, { level });
      printReport(report, words, terminal, showScale);
    });
}

function requireSongKey(words: SongKeyWords, harp: Harp): Key {
  const key = readSongKey(words, harp);
  if (key !== undefined) return key;
  throw new ReedplateError({ code: 'USAGE', value: 'scale', expected: '--key or --position' });
}

const BEYOND = 'in brackets: cannot be sounded at this level';

function showScale({ harp, key, position, scale, notes, run, levels }: ScaleReport, paint: Paint) {
  const [head = '', ...body] = setColumns([
    ['degree', 'note', 'tab'],
    ...notes.map(({ degree, note, tabs }) => [degree, note, tabs.join('  ') || '(none)']),
  ]);
  const coverage = TECHNIQUE_LEVELS.map(
    (level) => `${Math.floor(levels[level].coverage * 100)} % with ${level}`,
  );
  return [
    paint('heading', `${scale} in ${key} on ${sayHarp(harp)}, position ${position}`),
    '',
    paint('heading', head),
    ...body,
    '',
    `up and down: ${run.join(' ')}`,
    ...(notes.some(({ tabs }) => tabs.length === 0) ? [BEYOND] : []),
    '',
    paint('remark', coverage.join(', ')),
  ];
}
