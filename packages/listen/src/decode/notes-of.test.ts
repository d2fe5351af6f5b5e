import { describe, expect, test } from 'vitest';
import type { Frame } from '../frames/frames.js';
import type { Moment } from './decode.js';
import { notesOf } from './notes-of.js';

const SETTING = { loudest: -10, offset: 0 };
const frame = (pitch?: number): Frame => ({
  candidates: pitch === undefined ? [] : [{ pitch, weight: 1 }],
  clarity: 0.9,
  level: -10,
  rise: 0,
});
const run = (note: number, isAttack: boolean, count: number): readonly Moment[] =>
  Array.from({ length: count }, () => ({ note, isAttack }));
const heard = (moments: readonly Moment[], pitches: readonly (number | undefined)[]) =>
  notesOf(moments, pitches.map(frame), [60, 62], SETTING);

describe('notesOf', () => {
  test('notesOf takes the cents of the held part, and passes over frames of another octave', () => {
    const moments = [...run(0, true, 3), ...run(0, false, 7)];
    const pitches = [59, 59.4, 59.8, 60.1, 60.1, 72, 60.1, 60.1, undefined, 60.1];
    const [note] = heard(moments, pitches);
    expect(note).toMatchObject({ start: 0, pitch: 60, cents: 10, velocity: 110, confidence: 0.9 });
    expect(note?.curve?.map(({ at }) => at)).toEqual([0, 0.01, 0.02, 0.03, 0.04, 0.06, 0.07, 0.09]);
    expect(note?.curve?.[0]).toEqual({ at: 0, cents: -100 });
  });

  test('notesOf gives no curve to a level note, and none where no pitch was heard', () => {
    expect(heard(run(1, false, 8), Array(8).fill(62.05))[0]).toMatchObject({ cents: 5 });
    expect(heard(run(1, false, 8), Array(8).fill(62.05))[0]).not.toHaveProperty('curve');
    expect(heard(run(1, true, 8), Array(8).fill(undefined))[0]).toMatchObject({ cents: 0 });
  });

  test('notesOf begins a note anew at an attack, and leaves out what is shorter than any note', () => {
    const twice = [
      ...run(0, true, 2),
      ...run(0, false, 6),
      ...run(0, true, 1),
      ...run(0, false, 6),
    ];
    expect(
      heard(
        twice,
        twice.map(() => 60),
      ).map(({ start }) => start),
    ).toEqual([0, 0.08]);
    const short = [...run(0, true, 4), ...run(-1, false, 6)];
    expect(
      heard(
        short,
        short.map(() => 60),
      ),
    ).toEqual([]);
  });
});
