import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { takeInGraces } from './graces.js';
import type { Heard } from './sounded.js';

const GRID = { pickup: 0, beatTicks: 960 };
const note = (start: number, end: number, pitch = 67): Heard => ({ index: 0, pitch, start, end });

describe('takeInGraces', () => {
  it('takeInGraces gives the time of a grace note on the beat to its own note', () => {
    const graced = [note(960, 1020, 66), note(1020, 1900)];
    expect(takeInGraces(graced, GRID)).toEqual([note(960, 1900)]);
  });

  it('takeInGraces gives the time of one before the beat back to the note before', () => {
    const graced = [note(0, 900, 64), note(900, 960, 66), note(960, 1900)];
    expect(takeInGraces(graced, GRID)).toEqual([note(0, 960, 64), note(960, 1900)]);
  });

  it('takeInGraces takes in several grace notes in a row', () => {
    const graced = [note(960, 1010, 65), note(1010, 1060, 66), note(1060, 1900)];
    expect(takeInGraces(graced, GRID)).toEqual([note(960, 1900)]);
    const before = [note(0, 860, 64), note(860, 910, 65), note(910, 960, 66), note(960, 1900)];
    expect(takeInGraces(before, GRID)).toEqual([note(0, 960, 64), note(960, 1900)]);
  });

  it('takeInGraces takes in a note that is marked as one, however long', () => {
    const marked: Heard = { ...note(720, 960, 66), grace: true };
    expect(takeInGraces([marked, note(960, 1900)], GRID)).toEqual([note(960, 1900)]);
    const together: Heard = { ...note(960, 1200, 66), grace: true };
    expect(takeInGraces([together, note(960, 1900)], GRID)).toEqual([note(960, 1900)]);
  });

  it.each([
    ['a note of an eighth of a beat', [note(840, 960, 66), note(960, 1900)]],
    ['a short note that leads to nothing', [note(0, 60), note(960, 1900)]],
    ['a short note before a shorter one', [note(0, 60), note(60, 100)]],
    ['a short note struck with a long one', [note(0, 60, 64), note(0, 900)]],
    ['a short note well before the next', [note(700, 760, 66), note(850, 1900)]],
    ['a short note at the end', [note(0, 900), note(900, 960)]],
  ])('takeInGraces leaves %s', (_, notes) => {
    expect(takeInGraces(notes, GRID)).toEqual(notes);
  });

  it('takeInGraces leaves lines of longer notes as they are', () => {
    const lengths = fc.array(
      fc.record({ wait: fc.nat(2000), length: fc.integer({ min: 120, max: 4000 }) }),
    );
    fc.assert(
      fc.property(lengths, (steps) => {
        let at = 0;
        const notes = steps.map(({ wait, length }) => {
          const start = at + wait;
          at = start + length;
          return note(start, at);
        });
        expect(takeInGraces(notes, GRID)).toEqual(notes);
      }),
    );
  });
});
