import type { Sounding } from '@reedplate/layout';
import { type Key, noteNameWithOctave } from '@reedplate/pitch';
import { formatTab, markOf } from '@reedplate/tab';

/** Grips in signs, those of several holes in brackets. */
export const tabOf = (grips: readonly (readonly Sounding[])[]): string =>
  formatTab(grips.map((grip) => grip.map(markOf)));

/** The notes of a grip, from the low end, spelled in the key of the song. */
export const notesOf = (soundings: readonly Sounding[], key: Key): string =>
  soundings.map(({ pitch }) => noteNameWithOctave(pitch, { key })).join(' ');

/** A place of a chart: the bar, and the felt beat where it is not the first. */
export const placeOf = ({ bar, beat }: { readonly bar: number; readonly beat: number }): string =>
  beat === 1 ? `${bar}` : `${bar}:${round(beat)}`;

/** A number to hundredths, without zeros at its end. */
export const round = (value: number): string => `${Math.round(value * 100) / 100}`;
