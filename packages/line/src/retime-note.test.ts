import { describe, expect, test } from 'vitest';
import { retimeNote } from './retime-note.js';

const note = {
  start: 0,
  duration: 100,
  pitch: 70,
  velocity: 90,
  curve: [
    { at: 0, cents: -10 },
    { at: 99, cents: 0 },
    { at: 100, cents: 20 },
  ],
};

describe('retimeNote', () => {
  test('moves and stretches a note with its curve, and keeps the rest', () => {
    const longer = { ...note, start: 7, duration: 200 };
    expect(retimeNote(note, { start: 7, duration: 200 })).toEqual({
      ...longer,
      curve: [
        { at: 0, cents: -10 },
        { at: 198, cents: 0 },
        { at: 200, cents: 20 },
      ],
    });
  });

  test('keeps of points that come together the last', () => {
    expect(retimeNote(note, { start: 0, duration: 10 }).curve).toEqual([
      { at: 0, cents: -10 },
      { at: 10, cents: 20 },
    ]);
  });

  test('adds no curve to a note without one', () => {
    const plain = { start: 0, duration: 100, pitch: 70 };
    expect(retimeNote(plain, { start: 5, duration: 9 })).toEqual({
      start: 5,
      duration: 9,
      pitch: 70,
    });
  });
});
