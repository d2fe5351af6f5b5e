import { describe, expect, test } from 'vitest';
import { LETTERS, NOTE_NAMES, parseNoteName, readNoteName, spellOnStep } from './note-name.js';
import { PITCH_CLASSES, type PitchClass } from './pitch-class.js';

describe('parseNoteName', () => {
  test('takes a name apart', () => {
    expect(parseNoteName('F##')).toEqual({ name: 'F##', step: 3, alteration: 2, pitchClass: 7 });
    expect(parseNoteName('Cb')).toEqual({ name: 'Cb', step: 0, alteration: -1, pitchClass: 11 });
  });

  test.each([
    ['bb', 'Bb'],
    ['b', 'B'],
    ['bbb', 'Bbb'],
    ['f♯', 'F#'],
    ['E♭♭', 'Ebb'],
    ['Gx', 'G##'],
    ['A𝄫', 'Abb'],
  ])('reads %s as %s', (text, name) => {
    expect(parseNoteName(text).name).toBe(name);
  });

  test.each([
    [''],
    ['H'],
    ['C#b'],
    ['Cbbb'],
    ['C4'],
    [' C'],
    ['CB'],
    ['xx'],
    ['__proto__'],
    ['valueOf'],
    [7],
    [null],
    [undefined],
    [['C']],
  ])('refuses %j', (text) => {
    expect(() => parseNoteName(text as string)).toThrow(
      expect.objectContaining({ code: 'NOTE_UNKNOWN', value: text }),
    );
  });

  test('suggests B for the H of half of Europe', () => {
    expect(() => parseNoteName('H')).toThrow(expect.objectContaining({ nearest: 'B' }));
    expect(() => parseNoteName('h#')).toThrow(expect.objectContaining({ nearest: 'B#' }));
  });

  test('gives frozen parts', () => {
    expect(Object.isFrozen(parseNoteName('C'))).toBe(true);
  });
});

describe('readNoteName', () => {
  test('reads as parseNoteName, without an error', () => {
    expect(readNoteName('Bb')).toBe(parseNoteName('Bb'));
    expect(readNoteName('H')).toBeUndefined();
  });
});

describe('NOTE_NAMES', () => {
  test('are seven letters by five accidentals, each once, frozen', () => {
    expect(new Set(NOTE_NAMES).size).toBe(35);
    expect(NOTE_NAMES).toHaveLength(35);
    expect(LETTERS.join('')).toBe('CDEFGAB');
    expect(Object.isFrozen(NOTE_NAMES) && Object.isFrozen(LETTERS)).toBe(true);
  });
});

describe('spellOnStep', () => {
  test('spells a pitch class on the step asked for, modulo 7 and 12', () => {
    expect(spellOnStep(10, 6)).toBe('Bb');
    expect(spellOnStep(10, -1)).toBe('Bb');
    expect(spellOnStep(10, 13)).toBe('Bb');
    expect(spellOnStep(-2 as PitchClass, 6)).toBe('Bb');
    expect(spellOnStep(0, 6)).toBe('B#');
    expect(spellOnStep(11, 0)).toBe('Cb');
  });

  test('gives each pitch class a name on just the steps within two semitones', () => {
    for (const pitchClass of PITCH_CLASSES) {
      const names = [0, 1, 2, 3, 4, 5, 6].flatMap((step) => spellOnStep(pitchClass, step) ?? []);
      expect(names).toEqual(
        [...NOTE_NAMES].filter((name) => parseNoteName(name).pitchClass === pitchClass),
      );
    }
  });

  test('refuses what is no whole number', () => {
    expect(() => spellOnStep(0, 0.5)).toThrow(expect.objectContaining({ code: 'NUMBER_RANGE' }));
    expect(() => spellOnStep(Number.NaN as PitchClass, 0)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});
