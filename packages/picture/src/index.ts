/**
 * Harps, charts, lines, takes and efforts as SVG pictures, each with its text.
 *
 * @packageDocumentation
 */

// Pictures

export { bendPicture } from './bend/bend-picture.js';
export type { ChartReader } from './chart/chart-layout.js';
export { type ChartFormat, type ChartPictureOptions, chartPicture } from './chart/chart-picture.js';
export { type BreathPictureOptions, breathPicture } from './effort/breath-picture.js';
export { effortPicture } from './effort/effort-picture.js';
export { fitPicture } from './fit/fit-picture.js';
export type { HarpNames } from './harp/harp-cells.js';
export { type HarpPictureOptions, harpPicture } from './harp/harp-picture.js';
export type { LineSoundings } from './line/line-notes.js';
export { type LinePictureOptions, linePicture } from './line/line-picture.js';
export type { Picture, PictureOptions } from './picture.js';
export { type PositionPictureOptions, positionPicture } from './position/position-picture.js';
export type { BarRange } from './require-bars.js';
export { type ScorePictureOptions, scorePicture } from './score/score-picture.js';

// Handouts

export type { HandoutLine } from './handout/handout-line.js';
export { type HandoutOptions, handoutPage } from './handout/handout-page.js';

// Themes

export { contrastOf, type Hex } from './theme/contrast.js';
export type { ChordRole, Shade, Theme } from './theme/theme.js';
export { THEME_IDS, THEMES, type ThemeId } from './theme/themes.js';
