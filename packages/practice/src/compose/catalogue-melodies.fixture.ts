import { findPhrases, modeOfPhrase } from '../catalogue/find-phrases.js';
import { phraseChart } from '../phrase/harmony.js';
import { lineOfPhrase } from '../phrase/line-of-phrase.js';
import type { MelodyExample } from './learn-melody.js';

/** Pitch of the tonic that all melodies are laid on. */
const HOME = 60;

/** The melodies of the catalogue in one mode, on C; rhythms of chords are none. */
export function catalogueMelodies(mode: 'major' | 'minor'): readonly MelodyExample[] {
  const key = mode === 'minor' ? 'Cm' : 'C';
  return findPhrases()
    .filter((phrase) => phrase.kind !== 'chord-rhythm' && modeOfPhrase(phrase) === mode)
    .map((phrase) => ({ line: lineOfPhrase(phrase, phraseChart(phrase, key), HOME), key }));
}
