import { describe, expect, test } from 'vitest';
import type { Line } from './line.js';
import { makeLine } from './make-line.js';
import { requireLine, requireNotes } from './require-line.js';

const riff = makeLine([{ start: 0, duration: 960, pitch: 67 }], { tempo: 90 });
const fails = (details: object) => expect.objectContaining({ code: 'LINE_INVALID', ...details });

describe('requireLine', () => {
  test('gives a line back, one from JSON too', () => {
    expect(requireLine(riff)).toBe(riff);
    const read: Line = JSON.parse(JSON.stringify(riff));
    expect(requireLine(read)).toBe(read);
  });

  test('refuses what is no line, and says what a line comes from', () => {
    for (const value of [null, undefined, 'C4', 67, riff.notes, () => riff]) {
      expect(() => requireLine(value as unknown as Line)).toThrow(
        fails({ value, expected: 'a line, as makeLine gives it' }),
      );
    }
  });

  test('looks at the lead, the tempo and every note', () => {
    expect(() => requireLine({ ...riff, pickup: -1 })).toThrow(fails({ value: -1 }));
    expect(() => requireLine({ ...riff, tempo: 0 })).toThrow(fails({ value: 0 }));
    const notes = [...riff.notes, null] as unknown as Line['notes'];
    expect(() => requireLine({ ...riff, notes })).toThrow(
      fails({ value: null, where: { path: 'notes[1]', index: 1 } }),
    );
    expect(() => requireLine({ ...riff, metre: '4/5' as '4/4' })).toThrow(
      expect.objectContaining({ code: 'METRE_UNKNOWN' }),
    );
  });
});

describe('requireNotes', () => {
  test('gives a line with notes back', () => {
    expect(requireNotes(riff)).toBe(riff);
  });

  test('refuses a line without notes', () => {
    const empty = makeLine([], { title: 'Silence' });
    expect(() => requireNotes(empty)).toThrow(
      expect.objectContaining({ code: 'LINE_EMPTY', value: empty }),
    );
  });
});
