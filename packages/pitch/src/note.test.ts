import { describe, expect, test } from 'vitest';
import type { KeyName } from './key.js';
import { midi, noteName, noteNameWithOctave } from './note.js';

describe('midi', () => {
  test.each([
    ['C4', 60],
    ['c4', 60],
    ['bb3', 58],
    ['b3', 59],
    ['B♭3', 58],
    ['F♯4', 66],
    ['Cx4', 62],
    ['B𝄫3', 57],
    ['B#3', 60],
    ['Cb4', 59],
    ['C-1', 0],
    ['B#-2', 0],
    ['G9', 127],
    ['Abb9', 127],
  ])('reads %s as %i', (note, number) => {
    expect(midi(note)).toBe(number);
  });

  test.each([
    [''],
    ['C'],
    ['H4'],
    ['4'],
    ['C 4'],
    ['C4.5'],
    ['C#b4'],
    ['C+4'],
    ['Cbbb4'],
    ['valueOf'],
    ['__proto__'],
    ['\uD834'],
    [`${'9'.repeat(100_000)}x`],
    [60],
    [['C4']],
    [Symbol('C4')],
    [null],
    [undefined],
    [{ toString: () => 'C4' }],
  ])('refuses what is no note (%#)', (note) => {
    expect(() => midi(note as string)).toThrow(
      expect.objectContaining({ code: 'NOTE_UNKNOWN', value: note }),
    );
  });

  test.each([
    ['Cb-1'],
    ['G#9'],
    ['C10'],
    ['C-2'],
    ['C100'],
    [`C${'9'.repeat(100_000)}`],
    [`C-${'9'.repeat(100_000)}`],
  ])('refuses a note beyond MIDI (%#)', (note) => {
    expect(() => midi(note)).toThrow(expect.objectContaining({ code: 'PITCH_RANGE', value: note }));
  });

  test.each([
    ['H4', 'B4'],
    ['C', 'C4'],
    ['Hb-1', 'Bb-1'],
    ['C##b5', 'C##5'],
    ['H12', undefined],
    ['valueOf', undefined],
  ])('suggests for %s %s', (note, nearest) => {
    expect(() => midi(note)).toThrow(expect.objectContaining({ nearest }));
  });
});

describe('noteName and noteNameWithOctave', () => {
  test.each<[KeyName | undefined, string]>([
    [undefined, 'C4 Db4 D4 Eb4 E4 F4 Gb4 G4 Ab4 A4 Bb4 B4'],
    ['A', 'C4 C#4 D4 Eb4 E4 F4 F#4 G4 G#4 A4 Bb4 B4'],
    ['Db', 'C4 Db4 D4 Eb4 Fb4 F4 Gb4 G4 Ab4 A4 Bb4 Cb5'],
    ['C#m', 'B#3 C#4 D4 D#4 E4 E#4 F#4 G4 G#4 A4 A#4 B4'],
  ])('spell the octave from middle C in %s', (key, names) => {
    const options = key === undefined ? {} : { key };
    const spelled = Array.from({ length: 12 }, (_, i) => noteNameWithOctave(60 + i, options));
    expect(spelled.join(' ')).toBe(names);
    expect(noteName(61, options)).toBe(spelled[1]?.slice(0, -1));
  });

  test.each([[-1], [128], [60.5], [Number.NaN], ['60']])('refuse %s', (pitch) => {
    for (const spelled of [noteName, noteNameWithOctave]) {
      expect(() => spelled(pitch as number)).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE', value: pitch }),
      );
    }
  });

  test('refuse a key that is none, rather than spell in C', () => {
    expect(() => noteName(61, { key: 'H' as KeyName })).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN' }),
    );
  });
});
