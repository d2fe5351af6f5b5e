import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { hearNotes, moveEarlier } from './sounded.js';

describe('hearNotes', () => {
  it('hearNotes makes one of a note and its continuation, and keeps the mark of a grace note', () => {
    const line = makeLine([
      { start: 0, duration: 60, pitch: 66, grace: true },
      { start: 60, duration: 900, pitch: 67 },
      { start: 960, duration: 960, pitch: 67 },
    ]);
    expect(hearNotes(line, 100)).toEqual([
      { index: 0, pitch: 66, start: 100, end: 160, grace: true },
      { index: 1, pitch: 67, start: 160, end: 2020 },
    ]);
  });

  it('moveEarlier moves every note, by a single tick too', () => {
    const heard = hearNotes(makeLine([{ start: 5, duration: 10, pitch: 67 }]), 0);
    expect(moveEarlier(heard, 1)).toEqual([{ index: 0, pitch: 67, start: 4, end: 14 }]);
    expect(moveEarlier(heard, 0)).toBe(heard);
  });
});
