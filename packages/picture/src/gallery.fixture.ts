import { scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { everyHarp, explainPath, fitHarps, type PathExplanation } from '@reedplate/playability';
import { lineOfTab, parseTimedTab } from '@reedplate/tab';
import { bendPicture } from './bend/bend-picture.js';
import { chartPicture } from './chart/chart-picture.js';
import { breathPicture } from './effort/breath-picture.js';
import { effortPicture } from './effort/effort-picture.js';
import { fitPicture } from './fit/fit-picture.js';
import { harpPicture } from './harp/harp-picture.js';
import { linePicture } from './line/line-picture.js';
import type { Picture, PictureOptions } from './picture.js';
import { positionPicture } from './position/position-picture.js';
import { scorePicture } from './score/score-picture.js';

const chart = makeChart('quick-change', 'G', { choruses: 2, tempo: 96 });

/** A line of our own over the first bars of the chart. */
const LINE = lineOfTab(
  parseTimedTab(
    "-2 -3':1/2 -3:1/2 -4 -5:1/2 -4:1/2 +4:2 +4:1/3 -3':1/3 -2:1/3 +3 (-1-2-3):2 r:1/2 -4:1/4 -4':1/4 -4 -3'':4",
  ),
  makeHarp('C'),
);

const TAKE_CHART = makeChart('quick-change', 'G');

/** A take of our own: it follows at first, misses a chord, clashes, rests, and comes home. */
const TAKE = lineOfTab(
  parseTimedTab(
    "-2 -3':1/2 -3:1/2 -4:2 +4 -5:1/2 +5:1/2 +4:2 -2:1/2 -3':1/2 -3 -4:2 -4' -5 -4 -3'' " +
      "+4:2 +5 -6 -3:2 -4':2 -2:1/2 -3':1/2 -3 -4:2 r:4 " +
      "-4:2 -5 -6 +5 +4:3 -2 -3' -3 -4 -4:2 -1:2",
  ),
  makeHarp('C'),
);

const SCORE = scoreLine(TAKE, TAKE_CHART);

const EXPLAINED = explainPath(LINE, makeHarp('C')) as PathExplanation;
const RANKING = fitHarps(LINE, [...everyHarp(), ...everyHarp({ tunings: ['dorian'] })], {
  count: 24,
});

/** A bend that comes down to its target, one that stops short, and a note with vibrato. */
const HEARD = [
  { start: 1, duration: 0.5, pitch: 67, cents: -4 },
  {
    start: 1.6,
    duration: 0.9,
    pitch: 70,
    cents: 3,
    curve: [0, 0.1, 0.2, 0.3].map((at) => ({ at, cents: 100 - 325 * at })),
  },
  {
    start: 2.6,
    duration: 0.8,
    pitch: 69,
    cents: 45,
    curve: [0, 0.2, 0.5].map((at) => ({ at, cents: 200 - 310 * at })),
  },
  {
    start: 3.5,
    duration: 1,
    pitch: 72,
    cents: 0,
    curve: Array.from({ length: 21 }, (_, at) => ({ at: at / 20, cents: 30 * Math.sin(at) })),
  },
];

/** One of each picture, in any look: what is drawn for tests and looked at. */
export const GALLERY: readonly (readonly [string, (look: PictureOptions) => Picture])[] = [
  ['harp', (look) => harpPicture('C', { ...look, level: 'overbends' })],
  ['harp-degrees', (look) => harpPicture('C', { ...look, names: 'degrees', key: 'G' })],
  ['harp-one', (look) => harpPicture('C', { ...look, chord: 'G7', key: 'G' })],
  ['harp-five', (look) => harpPicture('C', { ...look, chord: 'D9', key: 'G', mirrored: true })],
  ['chart-student', (look) => chartPicture(chart, { ...look, harp: 'C' })],
  ['chart-band', (look) => chartPicture(chart, { ...look, reader: 'band' })],
  [
    'chart-slide',
    ({ theme = 'screen' }) => chartPicture(chart, { theme, format: 'slide', harp: 'C' }),
  ],
  [
    'line',
    (look) => linePicture(LINE, 'C', { ...look, chart, title: 'A line over a quick change' }),
  ],
  ['bend', (look) => bendPicture(HEARD, look)],
  ['breath', (look) => breathPicture(EXPLAINED, LINE, look)],
  ['effort', (look) => effortPicture(EXPLAINED, look)],
  ['fit', (look) => fitPicture(RANKING, look)],
  ['score', (look) => scorePicture(SCORE, TAKE_CHART, look)],
  ['position', (look) => positionPicture('G', { ...look, harps: ['A', 'C', 'D', 'F', 'G'] })],
];
