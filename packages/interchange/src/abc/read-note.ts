import { powerOfTwo } from '@reedplate/pitch';
import { LETTER_SEMITONES } from '../notation/staff-pitch.js';
import { ACCIDENTAL_SEMITONES, type StaffLetter } from './key-field.js';
import type { EventNote, Voice } from './voice.js';

const NOTE = /(\^{1,2}|_{1,2}|=)?([A-Ga-g])([,']*)(\d*)(\/*)(\d*)(-?)/gu;
const MIDDLE_C = 60;

/**
 * The notes of a text such as `^c'3/2` or `CE-G`, with their pitches by signature, accidentals of
 * the bar and ties. Lengths are in ticks; pitches are not yet held to the range of MIDI.
 */
export function readNotes(text: string, voice: Voice): readonly EventNote[] {
  return Array.from(text.matchAll(NOTE), (found): EventNote => {
    const [, sign, name = '', marks = '', upper = '', slashes = '', lower = '', tie] = found;
    const letter = name.toUpperCase() as StaffLetter;
    const octave = (name === letter ? 0 : 1) + octavesOf(marks);
    const natural = MIDDLE_C + 12 * octave + (LETTER_SEMITONES.get(letter) ?? 0);
    const pitch =
      tiedPitch(voice, letter, octave, sign) ?? natural + alter(voice, letter, octave, sign);
    return {
      letter,
      octave,
      pitch: pitch + voice.shift,
      length: voice.unitTicks * readLength(upper, slashes, lower),
      tied: tie === '-',
    };
  });
}

function octavesOf(marks: string): number {
  return [...marks].reduce((sum, mark) => sum + (mark === ',' ? -1 : 1), 0);
}

/** A note tied to a sharpened one is sharp too, in the next bar as well. */
function tiedPitch(
  voice: Voice,
  letter: StaffLetter,
  octave: number,
  sign: string | undefined,
): number | undefined {
  const tied = voice.tiedPitches.get(`${letter}${octave}`);
  return sign === undefined && tied !== undefined ? tied - voice.shift : undefined;
}

function alter(
  voice: Voice,
  letter: StaffLetter,
  octave: number,
  sign: string | undefined,
): number {
  const { accidentals, signature, reach } = voice;
  const place = reach === 'octave' ? `${letter}${octave}` : letter;
  if (sign === undefined) return accidentals.get(place) ?? signature.get(letter) ?? 0;
  const semitones = ACCIDENTAL_SEMITONES.get(sign) ?? 0;
  if (reach !== 'not') accidentals.set(place, semitones);
  return semitones;
}

/** The factor of a length such as `3`, `3/2`, `/`, `//` or `/4`. */
export function readLength(upper: string, slashes: string, lower: string): number {
  const numerator = upper === '' ? 1 : Number(upper);
  if (slashes === '') return numerator;
  return lower === '' ? numerator / powerOfTwo(slashes.length) : numerator / Number(lower);
}
