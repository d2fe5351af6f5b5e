import { formatForm, makeForm, parseForm, toMinor } from '@reedplate/form';
import { itemAt, toPitchClass } from '@reedplate/pitch';
import { modeOfPhrase } from '../catalogue/find-phrases.js';
import { distinctNotes } from '../phrase/distinct-notes.js';
import { phraseChart, soundingChord } from '../phrase/harmony.js';
import { toneOf } from '../phrase/lay-phrase.js';
import type { Phrase, PhraseNote } from '../phrase/phrase.js';
import { atHeight, heights } from './degrees.js';
import { rebuild } from './rebuild.js';
import { degreeOnRoot } from './sequence.js';

/** Thirds and sixths of the key are those of minor, where the chord does not say. */
const TO_MINOR: ReadonlyMap<number, number> = new Map([
  [4, 3],
  [9, 8],
]);

/** The phrase in the minor key: a phrase in minor stays as it is. */
export function inMinor(phrase: Phrase): Phrase {
  if (modeOfPhrase(phrase) === 'minor') return phrase;
  const form = toMinor(makeForm(parseForm(phrase.harmony).bars, { metre: phrase.metre }));
  const harmony = form.bars.map((bar) => formatForm(makeForm([bar])).slice(2, -2)).join(' | ');
  const own = phraseChart(phrase, 'C');
  const there = phraseChart({ ...phrase, harmony }, 'C');
  const above = heights(phrase, own);
  const notes = phrase.notes.map((note, index): PhraseNote => {
    const height = itemAt(above, index);
    const chord = soundingChord(own, note.at);
    const found = soundingChord(there, note.at);
    const isTone =
      chord?.tones.some(({ pitchClass }) => pitchClass === toPitchClass(height)) ?? false;
    const move = isTone
      ? toneOf(degreeOnRoot(height, own, note.at), chord, found)
      : (TO_MINOR.get(toPitchClass(height)) ?? toPitchClass(height)) - toPitchClass(height);
    return atHeight(note, height + move, phrase.from, there);
  });
  return rebuild(phrase, 'minor', distinctNotes(notes), { harmony });
}
