import { makeChart, parseForm } from '@reedplate/form';
import { makePlayer } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { EXERCISE_KINDS, makeExercise } from './make-exercise.js';

const chart = makeChart('basic', 'G');
const withBreak = makeChart(parseForm('I7 | N.C. | IV7 | V7'), 'G');

describe('makeExercise, on charts and for players out of the common', () => {
  it.each(EXERCISE_KINDS.filter((kind) => kind !== 'bend-drill'))(
    'makeExercise leaves the break to the others: %s',
    (kind) => {
      const made = makeExercise(withBreak, 'C', { kind });
      const starts = made.playable ? made.line.notes.map(({ start }) => start) : [];
      expect(starts.some((start) => start >= 3840 && start < 7680)).toBe(false);
      expect(new Set(starts.map((start) => Math.floor(start / 3840)))).toEqual(new Set([0, 2, 3]));
    },
  );

  it.each(EXERCISE_KINDS)('makeExercise plays %s over chords without a third', (kind) => {
    const made = makeExercise(makeChart(parseForm('I5 | IV5'), 'G'), 'C', { kind });
    expect(made.playable && made.line.notes.length).toBeGreaterThan(1);
  });

  it('makeExercise keeps the tempo of the chart', () => {
    const slow = makeChart('basic', 'G', { tempo: 52 });
    for (const kind of ['thirds', 'bend-drill'] as const) {
      const made = makeExercise(slow, 'C', { kind });
      expect(made.playable && made.line.tempo).toBe(52);
    }
  });

  it('makeExercise goes above hole 7 where the player has nothing below', () => {
    const level = makePlayer([{ technique: 'natural', holes: [8, 9, 10] }]);
    const made = makeExercise(chart, 'C', { kind: 'thirds', level });
    const holes = made.playable ? made.soundings.flat().map(({ hole }) => hole) : [];
    expect(Math.min(...holes)).toBeGreaterThanOrEqual(8);
  });

  it('makeExercise says which chords the player has no tone of', () => {
    const level = makePlayer([{ technique: 'natural', breath: 'blow', holes: [2] }]);
    expect(makeExercise(chart, 'C', { kind: 'thirds', level })).toMatchObject({
      playable: false,
      goal: expect.stringContaining('third of each chord'),
      without: ['G7', 'D7'],
    });
  });
});
