import { scoreLine } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { makeChart } from '@reedplate/form';
import type { Harp, PlayerLike } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import {
  breathPicture,
  chartPicture,
  effortPicture,
  fitPicture,
  harpPicture,
  linePicture,
  type Picture,
  type PictureOptions,
  positionPicture,
  scorePicture,
  type ThemeId,
} from '@reedplate/picture';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import { everyHarp, explainPath, fitHarps, type PathExplanation } from '@reedplate/playability';
import { type ChartForLineWords, readChartFor } from '../../shared/chart-for-line.js';
import { readFrame, readVariedForm } from '../../shared/chart-options.js';
import { type MaybeHarpWords, readMaybeHarp } from '../../shared/harp-options.js';
import { type LevelWords, readLevel } from '../../shared/level-options.js';
import { type PartWords, readPart } from '../../shared/part-option.js';
import { readPieceFile } from '../../shared/piece-file.js';
import { readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

/** Words of `reedplate picture`. */
export interface PictureWords
  extends Partial<ChartForLineWords>,
    LevelWords,
    MaybeHarpWords,
    PartWords {
  readonly take?: string;
  readonly chord?: string;
  readonly degrees: boolean;
  readonly mirrored: boolean;
  readonly band: boolean;
  readonly slide: boolean;
  readonly theme: string;
  readonly width?: string;
  readonly title?: string;
  readonly text: boolean;
  readonly output: string;
}

/** What can be drawn. */
export const PICTURE_IDS = [
  'harp',
  'chart',
  'line',
  'score',
  'breath',
  'effort',
  'fit',
  'position',
] as const;
export type PictureId = (typeof PICTURE_IDS)[number];

type Drawer = (words: PictureWords, terminal: Terminal) => Picture;

/** How each is drawn. */
export const DRAWERS: Readonly<Record<PictureId, Drawer>> = {
  harp: (words, terminal) =>
    harpPicture(harpOf(words, terminal), {
      ...lookOf(words),
      ...levelOf(words, terminal),
      ...(words.key === undefined ? {} : { key: parseKey(words.key) }),
      ...(words.chord === undefined ? {} : { chord: words.chord }),
      names: words.degrees ? 'degrees' : 'notes',
      mirrored: words.mirrored,
    }),
  chart: (words, terminal) =>
    chartPicture(chartOf(words, terminal), {
      ...lookOf(words),
      ...levelOf(words, terminal),
      ...readMaybeHarp(words, terminal),
      reader: words.band ? 'band' : 'student',
      format: words.slide ? 'slide' : 'page',
    }),
  line: (words, terminal) =>
    linePicture(lineOf(words, terminal), harpOf(words, terminal), {
      ...lookOf(words),
      ...levelOf(words, terminal),
      ...(words.key === undefined ? {} : { chart: chartOf(words, terminal) }),
    }),
  score: (words, terminal) => {
    const take = lineOf(words, terminal);
    const key = need(words.key, '--key');
    const chart = readChartFor(take, { ...words, form: words.form ?? 'basic', key }, terminal, 1);
    return scorePicture(scoreLine(take, chart), chart, lookOf(words));
  },
  breath: (words, terminal) => {
    const line = lineOf(words, terminal);
    return breathPicture(explained(line, words, terminal), line, lookOf(words));
  },
  effort: (words, terminal) =>
    effortPicture(explained(lineOf(words, terminal), words, terminal), lookOf(words)),
  fit: (words, terminal) => {
    const ranking = fitHarps(lineOf(words, terminal), everyHarp(), {
      ...levelOf(words, terminal),
      count: 12,
    });
    return fitPicture(ranking, lookOf(words));
  },
  position: (words, terminal) =>
    positionPicture(parseKey(need(words.key, '--key')), {
      ...lookOf(words),
      harps: Object.values(readMaybeHarp(words, terminal)),
    }),
};

function lookOf({ theme, width, title }: PictureWords): PictureOptions {
  const bounds = { min: 200, max: 4000, what: 'pixels of width' };
  return {
    theme: theme as ThemeId,
    ...(width === undefined ? {} : { width: readWholeNumber(width, bounds) }),
    ...(title === undefined ? {} : { title }),
  };
}

function levelOf(words: PictureWords, terminal: Terminal): { readonly level: PlayerLike } {
  return { level: readLevel(words, terminal) };
}

function harpOf(words: PictureWords, terminal: Terminal): Harp {
  return readMaybeHarp({ ...words, harp: need(words.harp, '--harp') }, terminal).harp as Harp;
}

function chartOf({ form = 'basic', ...words }: PictureWords, terminal: Terminal): Chart {
  const key = parseKey(need(words.key, '--key'));
  return makeChart(readVariedForm({ ...words, form }, key, terminal), key, readFrame(words));
}

function lineOf(words: PictureWords, terminal: Terminal): Line {
  const harp = readMaybeHarp(words, terminal);
  return readPieceFile(need(words.take, '--take'), terminal, { ...harp, ...readPart(words) }).line;
}

function explained(line: Line, words: PictureWords, terminal: Terminal): PathExplanation {
  const found = explainPath(line, harpOf(words, terminal), levelOf(words, terminal));
  if (found.playable) return found;
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: found.missing,
    expected: 'a line that the harp can play; reedplate path says what it lacks',
  });
}

function need(word: string | undefined, option: string): string {
  if (word !== undefined) return word;
  throw new ReedplateError({
    code: 'USAGE',
    value: 'picture',
    expected: `${option} for what is drawn`,
  });
}
