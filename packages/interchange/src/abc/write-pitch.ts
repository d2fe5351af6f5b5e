import type { Chord, KeyName } from '@reedplate/pitch';
import { staffPitch } from '../notation/staff-pitch.js';
import type { Signature, StaffLetter } from './key-field.js';

/** Alterations that each letter has had in a bar, which decide what the next one needs. */
export type BarAccidentals = Map<StaffLetter, number>;

const SIGN_OF_ALTERATION: ReadonlyMap<number, string> = new Map([
  [-2, '__'],
  [-1, '_'],
  [0, '='],
  [1, '^'],
  [2, '^^'],
]);

/** The octave of C to B, which ABC writes in capitals without marks. */
const PLAIN_OCTAVE = 4;

/** What pitches are spelled in. */
export interface PitchSpelling {
  readonly key: KeyName;
  readonly signature: Signature;
  /** The chord that they begin over. */
  readonly chord?: Chord | undefined;
}

/**
 * A pitch as ABC writes it, with every sign that any rule of accidentals could ask for: readers
 * differ on whether one holds in its octave or in all.
 */
export function writePitch(
  pitch: number,
  { key, signature, chord }: PitchSpelling,
  accidentals: BarAccidentals,
): string {
  const { letter, alteration, octave } = staffPitch(pitch, key, chord);
  const usual = signature.get(letter) ?? 0;
  const isPlain = alteration === usual && (accidentals.get(letter) ?? usual) === usual;
  // Once altered, a letter carries its sign until the bar line.
  if (!isPlain) accidentals.set(letter, alteration === usual ? Number.NaN : alteration);
  const sign = isPlain ? '' : SIGN_OF_ALTERATION.get(alteration);
  return `${sign}${writeOctave(letter, octave)}`;
}

/**
 * Marks letters that a chord holds twice, as G and G♭, so that each of them carries its sign.
 */
export function markDoubled(
  pitches: readonly number[],
  { key, chord }: Omit<PitchSpelling, 'signature'>,
  accidentals: BarAccidentals,
): void {
  const letters = pitches.map((pitch) => staffPitch(pitch, key, chord).letter);
  for (const [at, letter] of letters.entries()) {
    if (letters.indexOf(letter) !== at) accidentals.set(letter, Number.NaN);
  }
}

function writeOctave(letter: StaffLetter, octave: number): string {
  if (octave <= PLAIN_OCTAVE) return `${letter}${','.repeat(PLAIN_OCTAVE - octave)}`;
  return `${letter.toLowerCase()}${"'".repeat(octave - PLAIN_OCTAVE - 1)}`;
}
