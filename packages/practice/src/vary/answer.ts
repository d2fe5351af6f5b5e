import { itemAt } from '@reedplate/pitch';
import { phraseChart, rootAbove, soundingChord } from '../phrase/harmony.js';
import type { Phrase } from '../phrase/phrase.js';
import { atHeight, heights, tonesBetween } from './degrees.js';
import { rebuild } from './rebuild.js';

/**
 * A response to a call: its rhythm, its first half, and then down the tones of each chord to the root of
 * the last one.
 */
export function answered(phrase: Phrase): Phrase {
  const chart = phraseChart(phrase, 'C');
  const above = heights(phrase, chart);
  const floor = Math.min(...above);
  const times = [...new Set(phrase.notes.map(({ at }) => at))];
  const half = itemAt(times, Math.floor(times.length / 2));
  const last = itemAt(times, -1);
  let height = Math.max(...above.filter((_, index) => itemAt(phrase.notes, index).at <= half));
  const notes = phrase.notes.flatMap((note, index) => {
    if (note.at < half && note.at !== last) return [note];
    // Of notes struck together the lowest alone goes on: a response is a single voice.
    if (phrase.notes[index - 1]?.at === note.at) return [];
    if (note.at === last) {
      const root = rootAbove(chart, note.at);
      return [atHeight(note, root + 12 * Math.floor((height - root) / 12), phrase.from, chart)];
    }
    const chord = soundingChord(chart, note.at);
    const below = tonesBetween(chord, chart, [floor, height - 1]);
    // At the bottom of the call it begins to come down again, an octave higher.
    height = below.at(-1) ?? tonesBetween(chord, chart, [floor, floor + 12]).at(-1) ?? height;
    return [atHeight(note, height, phrase.from, chart)];
  });
  return rebuild(phrase, 'answered', notes, { kind: 'response' });
}
