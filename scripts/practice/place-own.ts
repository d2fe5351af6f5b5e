import { songKeyOf } from '@reedplate/position';
import { type Phrase, phraseChart, placePhrase } from '@reedplate/practice';

/** A phrase of the catalogue on a harp in C in its position, over the chords it was made for. */
export function placeOwn(phrase: Phrase) {
  const chart = phraseChart(phrase, songKeyOf('C', phrase.position).tonic);
  const placed = placePhrase(phrase, { chart, harp: 'C', level: phrase.level });
  if (!placed.playable) throw new Error(`${phrase.id} is not playable`);
  return { chart, line: placed.line };
}
