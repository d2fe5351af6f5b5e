import { randomFrom } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hearNotes } from './hear-notes.js';
import { type PlayedNote, play } from './play.fixture.js';

/** Four notes of a C harp: draw 2, draw 3 with a half-step bend, blow 4, draw 4. */
const PHRASE: readonly PlayedNote[] = [67, 70, 72, 74].map((pitch, at) => ({
  start: 0.2 + at * 0.4,
  duration: 0.35,
  pitch,
}));
const pitchesIn = (notes: readonly PlayedNote[], look = {}) =>
  hearNotes(play(notes, look)).notes.map(({ pitch }) => pitch);

describe('hearNotes', () => {
  test('hearNotes hears when notes begin and end, and their pitches', () => {
    const { notes, reference, seconds } = hearNotes(play(PHRASE));
    expect(notes.map(({ pitch }) => pitch)).toEqual([67, 70, 72, 74]);
    for (const [at, note] of notes.entries()) {
      expect(Math.abs(note.start - (PHRASE[at]?.start ?? 0))).toBeLessThan(0.04);
      expect(Math.abs(note.duration - 0.35)).toBeLessThan(0.05);
      expect(Math.abs(note.cents ?? 99)).toBeLessThan(2);
      expect(note.confidence).toBeGreaterThan(0.9);
    }
    expect(reference).toBeCloseTo(440, 0);
    expect(seconds).toBeCloseTo(2, 5);
  });

  test('hearNotes counts cents from the pitch that the harp is tuned to, and says which that is', () => {
    const { notes, reference } = hearNotes(play(PHRASE, { reference: 444 }));
    expect(Math.abs(reference - 444)).toBeLessThan(0.5);
    expect(notes.map(({ pitch }) => pitch)).toEqual([67, 70, 72, 74]);
    expect(Math.max(...notes.map(({ cents = 99 }) => Math.abs(cents)))).toBeLessThan(3);
  });

  test('hearNotes says how flat a bend is held', () => {
    const [first, bend, ...rest] = PHRASE as [PlayedNote, PlayedNote];
    const { notes } = hearNotes(
      play([first, { ...bend, cents: () => -28 }, ...rest], { seconds: 3 }),
    );
    expect(notes.map(({ pitch }) => pitch)).toEqual([67, 70, 72, 74]);
    const others = notes.filter((_, at) => at !== 1).map(({ cents = 0 }) => cents);
    const usual = others.reduce((sum, cents) => sum + cents, 0) / others.length;
    expect(Math.abs((notes[1]?.cents ?? 0) - usual + 28)).toBeLessThan(3);
  });

  test('hearNotes joins a scoop to the note that it leads to, as a curve', () => {
    const scoop = {
      start: 0.3,
      duration: 0.6,
      pitch: 70,
      cents: (at: number) => Math.min(0, -150 + 1500 * at),
    };
    const { notes } = hearNotes(play([PHRASE[0] as PlayedNote, { ...scoop, start: 0.7 }]));
    expect(notes.map(({ pitch }) => pitch)).toEqual([67, 70]);
    const curve = notes[1]?.curve ?? [];
    expect(curve[0]?.cents).toBeLessThan(-60);
    expect(Math.abs(curve.at(-1)?.cents ?? 99)).toBeLessThan(10);
    expect(notes[0]?.curve).toBeUndefined();
  });

  test('hearNotes gives the pitch from moment to moment under vibrato', () => {
    const shaken = {
      start: 0.2,
      duration: 1,
      pitch: 72,
      cents: (at: number) => 40 * Math.sin(10 * Math.PI * at),
    };
    const [note] = hearNotes(play([shaken])).notes;
    const cents = (note?.curve ?? []).map((point) => point.cents);
    expect(note?.pitch).toBe(72);
    expect(Math.max(...cents) - Math.min(...cents)).toBeGreaterThan(60);
  });

  test('hearNotes hears a note that is struck again', () => {
    const twice = [0.2, 0.6].map((start) => ({ start, duration: 0.39, pitch: 67 }));
    expect(pitchesIn(twice)).toEqual([67, 67]);
  });

  test('hearNotes hears nothing in silence, and nothing at all', () => {
    expect(hearNotes(play([])).notes).toEqual([]);
    expect(hearNotes({ sampleRate: 44_100, samples: new Float32Array() })).toEqual({
      notes: [],
      reference: 440,
      seconds: 0,
    });
  });

  test('hearNotes hears no note in noise, nor in a hum that stays above zero', () => {
    const random = randomFrom(5);
    const noise = Float32Array.from({ length: 22_050 }, () => random() - 0.5);
    expect(hearNotes({ sampleRate: 22_050, samples: noise }).notes).toEqual([]);
    const hum = Float32Array.from({ length: 22_050 }, () => 0.3);
    expect(hearNotes({ sampleRate: 22_050, samples: hum }).notes).toEqual([]);
  });

  test('hearNotes hears the notes of a harp that is known, and no others', () => {
    const { notes } = hearNotes(play(PHRASE), { harp: 'C', level: 'natural' });
    // A natural harp in C has no B flat there: the bend is heard as what lies nearest, or not at all.
    expect(notes.map(({ pitch }) => pitch)).not.toContain(70);
    expect(notes.map(({ pitch }) => pitch)).toEqual(expect.arrayContaining([67, 72, 74]));
  });

  test('hearNotes hears the same however loud it was recorded, and at any rate', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        fc.constantFrom(16_000, 22_050, 44_100, 48_000),
        fc.integer({ min: -5, max: 12 }),
        (gain, sampleRate, up) => {
          const moved = PHRASE.map((note) => ({ ...note, pitch: note.pitch + up }));
          const { notes } = hearNotes(play(moved, { gain, sampleRate }));
          expect(notes.map(({ pitch }) => pitch - up)).toEqual([67, 70, 72, 74]);
        },
      ),
      { numRuns: 10 },
    );
  });

  test('hearNotes refuses what is no sound, with the place', () => {
    const samples = Float32Array.from([0, Number.NaN]);
    const failure = (details: object) =>
      expect.objectContaining({ code: 'SOUND_INVALID', ...details });
    expect(() => hearNotes({ sampleRate: 44_100, samples })).toThrow(
      failure({ where: { path: 'samples[1]', index: 1 } }),
    );
    expect(() => hearNotes({ sampleRate: 44_100, samples: [0] as never })).toThrow(
      failure({ where: { path: 'samples' } }),
    );
    expect(() => hearNotes({ sampleRate: 3, samples })).toThrow(failure({ value: 3 }));
    expect(() => hearNotes(null as never)).toThrow(failure({}));
  });
});
