import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { itemAt, SCALE_DEGREES, type ScaleDegree, toPitchClass } from '@reedplate/pitch';
import { barsOf, phraseChart, plainHarmony, rootAbove, soundingChord } from '../phrase/harmony.js';
import { invalidPhrase } from '../phrase/invalid-phrase.js';
import { toneOf } from '../phrase/lay-phrase.js';
import type { Phrase, PhraseNote } from '../phrase/phrase.js';
import { heights } from './degrees.js';
import { rebuild } from './rebuild.js';

/** The degree above the root of the chord that sounds. */
export function degreeOnRoot(above: number, chart: Chart, tick: number): ScaleDegree {
  return SCALE_DEGREES[toPitchClass(above - rootAbove(chart, tick))] as ScaleDegree;
}

/**
 * A phrase said again and again through other chords, as often as they have room for it, each time moved
 * with the root; a third over a minor chord is minor.
 */
export function sequenced(phrase: Phrase, chords: string): Phrase {
  const harmony = plainHarmony(chords);
  const bars = barsOf(phrase);
  const times = Math.floor(barsOf({ harmony }) / bars);
  if (times === 0)
    throw invalidPhrase(chords, `chords for ${bars} bars and more`, { path: 'harmony' });
  if (phrase.pickup > 0)
    throw invalidPhrase(phrase.pickup, 'a phrase without a pickup', { path: 'pickup' });
  const own = phraseChart(phrase, 'C');
  const there = phraseChart({ ...phrase, harmony }, 'C');
  const above = heights(phrase, own);
  const step = bars * parseMetre(phrase.metre).barTicks;
  const notes = Array.from({ length: times }, (_, time) =>
    phrase.notes.map((note, index): PhraseNote => {
      const at = note.at + time * step;
      const onRoot = itemAt(above, index) - rootAbove(own, note.at);
      const degree = SCALE_DEGREES[toPitchClass(onRoot)] as ScaleDegree;
      const moved = onRoot + toneOf(degree, soundingChord(own, note.at), soundingChord(there, at));
      return {
        ...note,
        at,
        degree: SCALE_DEGREES[toPitchClass(moved)] as ScaleDegree,
        octave: Math.floor(moved / 12),
      };
    }),
  );
  return rebuild(phrase, 'sequenced', notes.flat(), { harmony, from: 'chord' });
}
