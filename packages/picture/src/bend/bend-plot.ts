import type { NoteInSeconds } from '@reedplate/line';
import { HIGHEST_MIDI, noteNameWithOctave } from '@reedplate/pitch';
import type { Frame } from '../svg/frame.js';
import { textWidth } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';

/** Where seconds and pitches lie in a picture. */
export interface BendPlot {
  readonly small: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Height of a semitone. */
  readonly row: number;
  /** Semitones shown, from the highest down, one above and one below what sounds. */
  readonly rows: readonly number[];
  readonly from: number;
  readonly to: number;
  readonly xOf: (second: number) => number;
  /** For a pitch with its fraction. */
  readonly yOf: (pitch: number) => number;
}

/** How a row is called. */
export const rowName = (pitch: number): string => withSigns(noteNameWithOctave(pitch));

/** The largest of many: more than a call takes arguments. */
const mostOf = (values: readonly number[]): number =>
  values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);

/** Lays seconds across and semitones up, as far as notes and their curves reach. */
export function plotOf(frame: Frame, notes: readonly NoteInSeconds[]): BendPlot {
  const { theme, right, top } = frame;
  const small = Math.max(10, theme.textSize * 0.75);
  const reached = notes.flatMap(({ pitch, cents = 0, curve = [] }) => [
    pitch,
    pitch + cents / 100,
    ...curve.map((point) => pitch + point.cents / 100),
  ]);
  const highest = Math.min(HIGHEST_MIDI, Math.ceil(mostOf(reached)) + 1);
  const lowest = Math.max(0, Math.floor(-mostOf(reached.map((pitch) => -pitch))) - 1);
  const rows = Array.from({ length: highest - lowest + 1 }, (_, at) => highest - at);
  const from = -mostOf(notes.map(({ start }) => -start));
  const to = mostOf(notes.map(({ start, duration }) => start + duration));
  const names = rows.map((pitch) => textWidth(rowName(pitch), small));
  const left = frame.left + Math.max(...names) + small * 0.6;
  const row = small * 1.6;
  const begin = top + small * 0.6;
  return {
    small,
    left,
    right,
    top: begin,
    bottom: begin + row * rows.length,
    row,
    rows,
    from,
    to,
    xOf: (second) => left + ((second - from) / (to - from)) * (right - left),
    yOf: (pitch) =>
      begin + row * (highest - Math.min(highest + 0.5, Math.max(lowest - 0.5, pitch)) + 0.5),
  };
}
