import type { Chart } from '@reedplate/form';
import { type Chord, SCALE_DEGREES, toPitchClass } from '@reedplate/pitch';
import { rootAbove, tonicOf } from '../phrase/harmony.js';
import { aboveTonic } from '../phrase/line-of-phrase.js';
import type { Phrase, PhraseNote } from '../phrase/phrase.js';

/** Semitones of each note of a phrase above the tonic of its own chart. */
export function heights(phrase: Phrase, chart: Chart): readonly number[] {
  return phrase.notes.map((note) => aboveTonic(note, phrase, chart, note.at));
}

/** The note at another height above the tonic, counted as its phrase counts. */
export function atHeight(
  note: PhraseNote,
  above: number,
  from: Phrase['from'],
  chart: Chart,
): PhraseNote {
  const counted = above - (from === 'chord' ? rootAbove(chart, note.at) : 0);
  return {
    ...note,
    degree: SCALE_DEGREES[toPitchClass(counted)] as PhraseNote['degree'],
    octave: Math.floor(counted / 12),
  };
}

/** Heights above the tonic at which a chord has tones, from the lowest asked to the highest. */
export function tonesBetween(
  chord: Chord | null,
  chart: Chart,
  [lowest, highest]: readonly [number, number],
): readonly number[] {
  const classes = new Set(
    chord?.tones.map(({ pitchClass }) => toPitchClass(pitchClass - tonicOf(chart))),
  );
  return Array.from({ length: Math.max(0, highest - lowest + 1) }, (_, at) => lowest + at).filter(
    (above) => classes.has(toPitchClass(above)),
  );
}
