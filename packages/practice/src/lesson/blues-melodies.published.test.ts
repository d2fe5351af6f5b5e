import { makeChart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { SCALE_DEGREES } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { findPhrases } from '../catalogue/find-phrases.js';
import { composeLine } from '../compose/compose-line.js';
import { makeLesson } from './make-lesson.js';

const chart = makeChart('basic', 'G');
const { barTicks } = parseMetre(chart.metre);
const SEEDS = Array.from({ length: 20 }, (_, at) => at + 1);
/** Time and bar within its phrase of four bars. */
const inPhrase = (start: number) => start % (4 * barTicks);

published('open-music-theory-2', 'the phrases of a blues and who fills them', () => {
  test.each(SEEDS)(
    'composeLine with seed %i has three phrases of four bars, the second as the first: aab',
    (seed) => {
      const { steps } = composeLine(chart, 'C', { seed });
      const letters = [1, 5, 9].map((from) => {
        const own = steps.filter(({ bar }) => bar >= from && bar < from + 4);
        expect(own.length).toBeGreaterThan(0);
        return [...new Set(own.map(({ phrase }) => phrase))];
      });
      expect(letters).toEqual([['A'], ['A'], ['B']]);
      const rhythm = (from: number) =>
        steps
          .filter(({ bar }) => bar >= from && bar < from + 4)
          .map(({ start, duration }) => [inPhrase(start), duration]);
      expect(rhythm(5)).toEqual(rhythm(1));
      expect(rhythm(9)).not.toEqual(rhythm(1));
    },
  );

  test('makeLesson gives the call to the first two bars of each phrase, and the others to the answer', () => {
    for (const key of ['G', 'A', 'Bb', 'E'] as const) {
      const { steps } = makeLesson({ form: 'basic', key, goals: ['choruses'] });
      const { notes } = steps[0]?.line ?? { notes: [] };
      const phrases = new Set(notes.map(({ start }) => Math.floor(start / (4 * barTicks))));
      expect(phrases).toEqual(new Set([0, 1, 2]));
      for (const { start, duration } of notes) {
        expect(inPhrase(start) + duration).toBeLessThanOrEqual(2 * barTicks);
      }
    }
  });

  test('calls of the catalogue leave room for the answer, and responses are as long as calls', () => {
    const bars = (kind: 'call' | 'response') =>
      findPhrases({ kind }).map(({ harmony }) => harmony.split('|').length - 2);
    expect(new Set(bars('call'))).toEqual(new Set([2]));
    expect(new Set(bars('response'))).toEqual(new Set([2]));
  });
});

published('open-music-theory-2', 'the blues scale and the major blues scale', () => {
  const BLUES = ['1', 'b3', '4', 'b5', '5', 'b7'];
  const MAJOR_BLUES = ['1', '2', 'b3', '3', '5', '6'];

  test('the major blues scale is the blues scale begun on its second note', () => {
    const semitones = (degrees: readonly string[]) =>
      degrees.map((degree) => SCALE_DEGREES.indexOf(degree as '1'));
    const rotated = semitones(BLUES).map((each) => (each - 3 + 12) % 12);
    expect([...rotated].sort((a, b) => a - b)).toEqual(semitones(MAJOR_BLUES));
  });

  describe('licks of the catalogue in second position, counted from the key', () => {
    const licks = findPhrases({ kind: 'lick', position: 2, mode: 'major' }).filter(
      ({ from, harmony }) => from === 'key' && harmony === '| I7 |',
    );

    test('nine of ten notes are of the two scales together', () => {
      const both = new Set([...BLUES, ...MAJOR_BLUES]);
      const degrees = licks.flatMap(({ notes }) => notes.map(({ degree }) => degree));
      const within = degrees.filter((degree) => both.has(degree));
      expect(licks.length).toBeGreaterThan(20);
      expect(within.length / degrees.length).toBeGreaterThanOrEqual(0.9);
    });
  });
});
