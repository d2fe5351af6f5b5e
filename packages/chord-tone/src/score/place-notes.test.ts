import { describe, expect, it } from 'vitest';
import { placeNotes } from './place-notes.js';
import { BEAT } from './play.fixture.js';

const GRID = { pickup: 2 * BEAT, barTicks: 4 * BEAT, beatTicks: BEAT };
const at = (start: number, index: number) => ({
  index,
  pitch: 60 + index,
  start,
  end: start + 100,
});

describe('placeNotes', () => {
  it('placeNotes groups onsets no further apart than a sixteenth of a beat', () => {
    const near = placeNotes([at(0, 0), at(BEAT / 16, 1)], GRID, 1);
    expect(near.map(({ group }) => group)).toEqual([0, 0]);
    const apart = placeNotes([at(0, 0), at(BEAT / 16 + 1, 1)], GRID, 1);
    expect(apart.map(({ group }) => group)).toEqual([0, 1]);
  });

  it('placeNotes counts beats from bar 1, and gives a place the same strength in every bar', () => {
    const placed = placeNotes(
      [at(0, 0), at(2 * BEAT, 1), at(6 * BEAT, 2), at(7.5 * BEAT, 3)],
      GRID,
      1,
    );
    expect(placed.map(({ beats }) => beats)).toEqual([-2, 0, 4, 5.5]);
    const [beat3, beat1, again, off] = placed.map(({ metre }) => metre);
    expect([beat1, again]).toEqual([1, 1]);
    expect(beat3).toBeLessThan(1);
    expect(off).toBeLessThan(beat3 ?? 0);
  });
});
