import { describe, expect, test } from 'vitest';
import { makeLine } from './make-line.js';
import { lineEnd, transposeLine } from './transform.js';

const riff = makeLine(
  [
    { start: 0, duration: 960, pitch: 67 },
    { start: 960, duration: 480, pitch: 70 },
  ],
  { metre: '12/8', pickup: 480, tempo: 70, title: 'Kettle' },
);

describe('transposeLine', () => {
  test('moves every pitch and nothing else', () => {
    const { notes, ...rest } = transposeLine(riff, -5);
    expect(notes.map((note) => note.pitch)).toEqual([62, 65]);
    expect({ ...rest, notes: riff.notes }).toEqual(riff);
    expect(notes.map(({ start, duration }) => [start, duration])).toEqual([
      [0, 960],
      [960, 480],
    ]);
  });

  test.each([[58], [-68]])('refuses to leave MIDI by %i, and says which note', (semitones) => {
    expect(() => transposeLine(riff, semitones)).toThrow(
      expect.objectContaining({
        code: 'LINE_INVALID',
        where: expect.objectContaining({ path: expect.stringMatching(/^notes\[\d\]\.pitch$/) }),
      }),
    );
  });

  test.each([[0.5], [Number.NaN], ['5'], [undefined]])(
    'refuses %s semitones, for a line without notes too',
    (semitones) => {
      for (const line of [riff, makeLine([])]) {
        expect(() => transposeLine(line, semitones as number)).toThrow(
          expect.objectContaining({ code: 'NUMBER_RANGE', value: semitones }),
        );
      }
    },
  );
});

describe('lineEnd', () => {
  test('is where the last note to stop stops, which need not be the last to start', () => {
    expect(lineEnd(riff)).toBe(1440);
    const held = makeLine([
      { start: 0, duration: 4800, pitch: 60 },
      { start: 960, duration: 480, pitch: 67 },
    ]);
    expect(lineEnd(held)).toBe(4800);
  });

  test('is 0 for a line without notes', () => {
    expect(lineEnd(makeLine([]))).toBe(0);
  });
});
