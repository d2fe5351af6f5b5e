import { type Chord, type KeyName, toKey } from '@reedplate/pitch';
import { readKeyField } from '../abc/key-field.js';
import { staffPitch } from './staff-pitch.js';

/** A sign before a note. */
export type AccidentalSign = 'flat' | 'natural' | 'sharp';

/** A sign to be drawn; a cautionary one says what holds anyway. */
export interface ShownAccidental {
  readonly sign: AccidentalSign;
  readonly cautionary: boolean;
}

/** A pitch of a bar, in the order that a reader meets them. */
export interface ReadPitch {
  readonly pitch: number;
  /** A tied note goes on with the sign it began with, and sets none. */
  readonly tiedFrom: boolean;
  /** What it is spelled in besides the key. */
  readonly chord?: Chord | undefined;
}

const SIGNS: ReadonlyMap<number, AccidentalSign> = new Map([
  [-1, 'flat'],
  [0, 'natural'],
  [1, 'sharp'],
]);

/** What a bar left altered: places of the staff, by letter and octave. */
export type AlteredPlaces = ReadonlySet<string>;

/**
 * The signs before the notes of a bar, in its order: where a note differs from what holds for its place
 * of the staff, by the key or by a sign before it in the bar. A place that was altered in the bar before
 * gets a cautionary sign when it first comes back unaltered. Gardner Read, Music Notation (1969), chapter
 * on accidentals: value from memory.
 */
export function accidentalsOf(
  pitches: readonly ReadPitch[],
  key: KeyName,
  before: AlteredPlaces,
): { readonly shown: readonly (ShownAccidental | undefined)[]; readonly altered: AlteredPlaces } {
  const signature = readKeyField(toKey(key).name)?.signature ?? new Map();
  const holds = new Map<string, number>();
  const altered = new Set<string>();
  const met = new Set<string>();
  const shown = pitches.map(({ pitch, tiedFrom, chord }) => {
    const { letter, octave, alteration } = staffPitch(pitch, key, chord);
    const place = `${letter}${octave}`;
    const usual = signature.get(letter) ?? 0;
    if (alteration !== usual) altered.add(place);
    if (tiedFrom) return undefined;
    const isNew = alteration !== (holds.get(place) ?? usual);
    const isFirst = !met.has(place);
    met.add(place);
    holds.set(place, alteration);
    const sign = SIGNS.get(alteration);
    const cautionary = !isNew && isFirst && before.has(place);
    return sign !== undefined && (isNew || cautionary) ? { sign, cautionary } : undefined;
  });
  return { shown, altered };
}
