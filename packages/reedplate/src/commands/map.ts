import { parseKey, ReedplateError } from '@reedplate/pitch';
import { songKeyOf } from '@reedplate/position';
import type { Command } from 'commander';
import { examples } from '../command/examples.js';
import {
  type HarpWords,
  readHarp,
  readWholeNumber,
  withHarpOptions,
  withJson,
} from '../command/options.js';
import { type Paint, printReport } from '../command/print.js';
import { setColumns } from '../command/table.js';
import type { Terminal } from '../command/terminal.js';
import { type MapHole, type MapReport, mapReport } from '../reports/map.js';
import { sayHarp } from './say-harp.js';

interface MapWords extends HarpWords {
  readonly key?: string;
  readonly position?: string;
  readonly json: boolean;
}

/** Adds `reedplate map`. */
export function addMap(program: Command, terminal: Terminal): void {
  withJson(withHarpOptions(program.command('map')))
    .description('every hole of a harp: natural notes, bends, overbends, and their degrees')
    .option('--key <key>', 'key of the song, for the degrees')
    .option('--position <number>', 'position the song is played in, 1 to 12, instead of --key')
    .addHelpText('after', examples('reedplate map --harp C', 'reedplate map --harp A --position 2'))
    .action((words: MapWords) => {
      const harp = readHarp(words);
      const key = songKey(words, harp);
      printReport(mapReport(harp, key && { key }), words, terminal, showMap);
    });
}

function songKey({ key, position }: MapWords, harp: MapReport['harp']) {
  if (key !== undefined && position !== undefined) {
    throw new ReedplateError({
      code: 'USAGE',
      value: `--key ${key} --position ${position}`,
      expected: 'one of --key and --position, not both',
    });
  }
  if (position !== undefined) {
    return songKeyOf(harp, readWholeNumber(position, { min: 1, max: 12, what: 'a position' }));
  }
  return key === undefined ? undefined : parseKey(key);
}

function showMap({ harp, key, holes }: MapReport, paint: Paint): readonly string[] {
  const rows = rowsOf(holes);
  const [head = '', ...body] = setColumns([
    ['hole', ...holes.map(({ hole }) => `${hole}`)],
    ...rows,
  ]);
  const title = key === null ? sayHarp(harp) : `${sayHarp(harp)}, song in ${key}`;
  const remark = `' a semitone of bend, o an overbend; ${key === null ? 'give --key or --position for degrees' : 'degree of the song after each note'}`;
  return [
    paint('heading', title),
    '',
    paint('heading', head),
    ...body,
    '',
    paint('remark', remark),
  ];
}

/** Blow above draw, as a player holds the harp: each breath's bends and overbend outside it. */
const ROWS = [
  { label: 'overblow', breath: 'blow', technique: 'overblow', depth: 1 },
  ...[4, 3, 2, 1].map((depth) => ({
    label: `blow ${"'".repeat(depth)}`,
    breath: 'blow',
    technique: 'bend',
    depth,
  })),
  { label: 'blow', breath: 'blow', technique: 'natural', depth: 0 },
  { label: 'draw', breath: 'draw', technique: 'natural', depth: 0 },
  ...[1, 2, 3, 4].map((depth) => ({
    label: `draw ${"'".repeat(depth)}`,
    breath: 'draw',
    technique: 'bend',
    depth,
  })),
  { label: 'overdraw', breath: 'draw', technique: 'overdraw', depth: 1 },
] as const;

function rowsOf(holes: readonly MapHole[]): readonly (readonly string[])[] {
  return ROWS.map(({ label, ...wanted }) => [
    label,
    ...holes.map(({ soundings }) => {
      const found = soundings.find(
        ({ breath, technique, depth }) =>
          breath === wanted.breath && technique === wanted.technique && depth === wanted.depth,
      );
      if (found === undefined) return '';
      return found.degree === undefined ? found.note : `${found.note} ${found.degree}`;
    }),
  ]).filter(([, ...cells]) => cells.some((cell) => cell !== ''));
}
