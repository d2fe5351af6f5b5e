import { styleOfKey, toChord } from '@reedplate/chord-tone';
import { type HarpLike, type KnownTunings, type PlayerLike, toHarp } from '@reedplate/layout';
import {
  type ChordLike,
  type KeyLike,
  numeralOfChord,
  type OptionNames,
  requireOneOf,
  requireOptions,
  toKey,
} from '@reedplate/pitch';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend } from '../svg/legend.js';
import { roleOf } from '../theme/chord-role.js';
import { bracketsOf } from './brackets.js';
import { drawBracket, drawCell, drawNumbers, harpLegend } from './draw-harp.js';
import { cellsOf, type HarpNames } from './harp-cells.js';
import { layGrid } from './harp-grid.js';
import { describeHarp, harpInText, harpTitle } from './harp-in-words.js';

const HARP_NAMES: readonly HarpNames[] = ['notes', 'degrees'];

/** What {@link harpPicture} shows. */
export interface HarpPictureOptions extends PictureOptions {
  /** What notes are called; default `notes`. Degrees are those of `key`, else of first position. */
  readonly names?: HarpNames;
  /** Key of the song: it spells the notes, and gives the chord the colour of its step. */
  readonly key?: KeyLike;
  /** A chord whose tones are marked by degree and shape, and bracketed where they lie together. */
  readonly chord?: ChordLike;
  /** Default `bends`. */
  readonly level?: PlayerLike;
  /** Whether hole 1 is at the right, as some left-handed players hold it; default false. */
  readonly mirrored?: boolean;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const HARP_PICTURE_OPTIONS: OptionNames<HarpPictureOptions> = {
  ...PICTURE_OPTIONS,
  known: true,
  names: true,
  key: true,
  chord: true,
  level: true,
  mirrored: true,
};

/**
 * A picture of a harp: blow notes above the numbers of the holes, draw notes below, bends and overbends
 * outwards from them.
 *
 * @param harp a harp, or its name as `parseHarp` reads it
 * @throws ReedplateError `HARP_INVALID`, `KEY_UNKNOWN`, `CHORD_UNKNOWN`, `OPTION_UNKNOWN`, or
 *   `NUMBER_RANGE` for a width that does not hold it in readable text
 * @example
 * ```ts
 * import { harpPicture } from '@reedplate/picture';
 *
 * const { title, text } = harpPicture('C', { chord: 'G7', key: 'G', level: 'natural' });
 * title; // => 'C harp, song in G: G7'
 * text.split('\n')[2]; // => 'hole 2: +2 E, -2 G (1 of the chord)'
 * harpPicture('C', { chord: 'H7' }); // throws CHORD_UNKNOWN
 * ```
 */
export function harpPicture(harp: HarpLike, options: HarpPictureOptions = {}): Picture {
  requireOptions(options, HARP_PICTURE_OPTIONS, 'harpPicture');
  const { names = 'notes', level = 'bends', mirrored = false } = options;
  requireOneOf(names, HARP_NAMES, { what: 'what notes are called' });
  const subject = toHarp(harp, options.known);
  const key = options.key === undefined ? undefined : toKey(options.key);
  const chord = options.chord === undefined ? undefined : toChord(options.chord);
  const frame = makeFrame(options, harpTitle(subject, chord, key));
  const cells = cellsOf(subject, { names, key, chord, level });
  const style = key === undefined ? 'blues' : styleOfKey(key);
  const brackets = chord === undefined ? [] : bracketsOf(chord, subject, style);
  const numeral = chord && key ? numeralOfChord(chord, key).text : null;
  const { theme } = frame;
  const look = { theme, shade: theme.chords[roleOf(numeral)], hasChord: chord !== undefined };
  const holes = subject.holes.length;
  const grid = layGrid(frame, { cells, brackets, holes, mirrored, hasDegrees: look.hasChord });
  const legend = drawLegend(
    frame,
    harpLegend(cells, brackets, look),
    grid.bottom + grid.small * 0.6,
  );
  const shown = { harp: subject, chord, key, cells, brackets };
  return finishPicture(frame, {
    description: describeHarp(shown),
    text: harpInText(frame.title, shown),
    nodes: [
      ...drawNumbers(frame, grid, holes),
      ...brackets.map((bracket) => drawBracket(bracket, grid, look.shade)),
      ...cells.flatMap((cell) => drawCell(cell, grid, look)),
      ...legend.nodes,
    ],
    bottom: legend.bottom,
  });
}
