import { formById, makeChart } from '@reedplate/form';
import { chartPicture } from './chart/chart-picture.js';
import { harpPicture } from './harp/harp-picture.js';
import type { Picture, PictureOptions } from './picture.js';

const chart = makeChart(formById('quick-change'), { key: 'G', choruses: 2, tempo: 96 });

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
];
