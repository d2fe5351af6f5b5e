import { chordSuffixes, parseChord, randomFrom, TONICS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BASS_RANGE, playBass } from './bass.js';
import type { Beat } from './beats.js';
import { comp, nearestVoicing } from './comping.js';
import { countOff, DRUMS, drum } from './drums.js';
import { BASS_FIGURES, type Groove } from './groove.js';
import { GROOVES } from './grooves.js';

const grooveOf = (id: string): Groove => GROOVES.find((groove) => groove.id === id) as Groove;

/** The beats of a bar under one chord; `null` for a break. */
function beats(
  symbol: string | null,
  count: number,
  { next, ticks = 960, bar = 1 }: Partial<{ next: string; ticks: number; bar: number }> = {},
): readonly Beat[] {
  const chord = symbol === null ? null : parseChord(symbol);
  return Array.from({ length: count }, (_, at) => ({
    start: at * ticks,
    ticks,
    bar,
    inBar: at,
    beatsPerBar: count,
    underChord: at,
    left: (count - at) * ticks,
    chord,
    next: next !== undefined && at === count - 1 ? parseChord(next) : undefined,
    opensChorus: at === 0 && bar === 1,
  }));
}

const pitches = (notes: readonly { pitch: number }[]) => notes.map(({ pitch }) => pitch);
const bassOf = (symbol: string, figure: (typeof BASS_FIGURES)[number], count = 4) =>
  playBass(beats(symbol, count), figure, randomFrom(1));

describe('playBass', () => {
  // Common practice, no source: up the chord and down again, the sixth on top, the seventh in minor.
  test.each([
    ['G7', [31, 35, 38, 40, 43, 40, 38, 35]],
    ['Gm7', [31, 34, 38, 41, 43, 41, 38, 34]],
    ['Gm6', [31, 34, 38, 40, 43, 40, 38, 34]],
    ['Gdim7', [31, 34, 37, 40, 43, 40, 37, 34]],
    ['Gsus4', [31, 36, 38, 40, 43, 40, 38, 36]],
    ['E7', [28, 32, 35, 37, 40, 37, 35, 32]],
    ['Eb7', [39, 43, 46, 48, 51, 48, 46, 43]],
  ])('playBass walks over %s as %j, from the low E up', (symbol, walk) => {
    expect(pitches(bassOf(symbol, 'walk', 8))).toEqual(walk);
  });

  // Root and fifth on the first and third beat; the boogie by root, third, fifth and sixth. Common practice, no source.
  test.each([
    ['two-beat', [0, 1920], [31, 38]],
    ['boogie', [0, 480, 960, 1440, 1920, 2400, 2880, 3360], [31, 31, 35, 35, 38, 38, 40, 40]],
    ['eighths', [0, 480, 960, 1440, 1920, 2400, 2880, 3360], [31, 31, 31, 31, 31, 31, 31, 38]],
    ['syncopated', [0, 1440, 1920, 3360], [31, 38, 43, 38]],
  ] as const)('playBass plays %s over G7 at %j', (figure, starts, walk) => {
    const notes = bassOf('G7', figure);
    expect(notes.map(({ start }) => start)).toEqual(starts);
    expect(pitches(notes)).toEqual(walk);
  });

  test('playBass comes to another chord by a half step, from below or above, by the seed', () => {
    const last = (seed: number) =>
      playBass(beats('G7', 4, { next: 'C7' }), 'walk', randomFrom(seed)).at(-1)?.pitch;
    const found = new Set(Array.from({ length: 40 }, (_, seed) => last(seed)));
    expect(found).toEqual(new Set([35, 37]));
  });

  test('playBass stays in its range and leaps no octave, over chords of every quality', () => {
    const { lowest, highest } = BASS_RANGE;
    const chords = fc.record({
      root: fc.constantFrom(...TONICS),
      quality: fc.constantFrom(...chordSuffixes()),
    });
    const figures = fc.constantFrom(...BASS_FIGURES);
    fc.assert(
      fc.property(
        fc.array(chords, { minLength: 2, maxLength: 8 }),
        figures,
        fc.nat(),
        (row, figure, seed) => {
          const symbols = row.map(({ root, quality }) => `${root}${quality}`);
          const all = symbols.flatMap((symbol, at) => {
            const next = symbols[at + 1];
            return beats(symbol, 4, next === undefined ? {} : { next });
          });
          const played = pitches(playBass(all, figure, randomFrom(seed)));
          expect(played.every((pitch) => pitch >= lowest && pitch <= highest)).toBe(true);
          for (const [at, pitch] of played.slice(1).entries()) {
            expect(Math.abs(pitch - (played[at] ?? 0))).toBeLessThanOrEqual(12);
          }
        },
      ),
    );
  });

  test('playBass begins every chord on its root, whatever its quality', () => {
    for (const quality of chordSuffixes()) {
      for (const figure of BASS_FIGURES) {
        const [first] = pitches(bassOf(`Bb${quality}`, figure));
        expect([quality, figure, (first ?? 0) % 12]).toEqual([quality, figure, 10]);
      }
    }
  });

  test('playBass rests in a break', () => {
    for (const figure of BASS_FIGURES) {
      expect(playBass(beats(null, 4), figure, randomFrom(1))).toEqual([]);
    }
  });
});

describe('comp', () => {
  test('comp strikes in the rhythm of the groove, accents louder', () => {
    const notes = comp(beats('G7', 4), grooveOf('driving-shuffle'));
    expect(new Set(notes.map(({ start }) => start))).toEqual(new Set([960, 2880]));
    expect(new Set(notes.map(({ velocity }) => velocity))).toEqual(new Set([104]));
    expect(comp(beats(null, 4), grooveOf('boogie'))).toEqual([]);
  });

  test('comp moves its voices little: from G7 to C7 no voice goes further than a whole step', () => {
    const from = nearestVoicing(parseChord('G7'), []);
    const to = nearestVoicing(parseChord('C7'), from);
    expect(from).toEqual([53, 55, 59, 62]);
    for (const pitch of to) {
      expect(Math.min(...from.map((other) => Math.abs(other - pitch)))).toBeLessThanOrEqual(2);
    }
  });

  test('comp leaves the root of a ninth chord to the bass', () => {
    expect(new Set(nearestVoicing(parseChord('G9'), []).map((pitch) => pitch % 12))).toEqual(
      new Set([11, 2, 5, 9]),
    );
  });

  test('comp plays the boogie as fifth and sixth in turn; a minor chord keeps its fifth', () => {
    const tops = (symbol: string) =>
      comp(beats(symbol, 2), grooveOf('boogie')).map(({ start, pitch }) => [start, pitch % 12]);
    expect(tops('G7')).toEqual([
      [0, 7],
      [0, 2],
      [480, 7],
      [480, 2],
      [960, 7],
      [960, 4],
      [1440, 7],
      [1440, 4],
    ]);
    expect(tops('Gm7').slice(4)).toEqual([
      [960, 7],
      [960, 2],
      [1440, 7],
      [1440, 2],
    ]);
  });

  test('comp holds the chords of a slow blues for two beats, and no longer than the chord', () => {
    const notes = comp(beats('G7', 4, { ticks: 1440 }), grooveOf('slow-twelve-eight'));
    expect(new Set(notes.map(({ duration }) => duration))).toEqual(new Set([2880]));
    const short = comp(beats('G7', 1, { ticks: 1440 }), grooveOf('slow-twelve-eight'));
    expect(short[0]?.duration).toBe(1440);
  });
});

describe('drum', () => {
  const strokes = (notes: ReturnType<typeof drum>, pitch: number) =>
    notes.filter((note) => note.pitch === pitch).map(({ start }) => start);

  test('drum plays every swung eighth of a driving shuffle, snare on the back beat', () => {
    const notes = drum(beats('G7', 4), grooveOf('driving-shuffle'), randomFrom(1));
    expect(strokes(notes, DRUMS.ride)).toEqual([0, 480, 960, 1440, 1920, 2400, 2880, 3360]);
    expect(strokes(notes, DRUMS.snare)).toEqual([960, 2880]);
    expect(strokes(notes, DRUMS.kick)).toEqual([0, 1920]);
    expect(strokes(notes, DRUMS.crash)).toEqual([0]);
  });

  test('drum plays thirds of a dotted beat, and two parts of one as first and third', () => {
    const slow = drum(
      beats('G7', 2, { ticks: 1440 }),
      grooveOf('slow-twelve-eight'),
      randomFrom(1),
    );
    expect(strokes(slow, DRUMS.hat)).toEqual([0, 480, 960, 1440, 1920, 2400]);
    const two = drum(beats('G7', 1, { ticks: 1440 }), grooveOf('driving-shuffle'), randomFrom(1));
    expect(strokes(two, DRUMS.ride)).toEqual([0, 960]);
  });

  test('drum fills the end of every fourth bar, another way by another seed', () => {
    const fill = (seed: number) =>
      drum(beats('G7', 4, { bar: 4 }), grooveOf('driving-shuffle'), randomFrom(seed)).filter(
        ({ start }) => start >= 1920,
      );
    expect(strokes(fill(1), DRUMS.ride)).toEqual([]);
    expect(new Set(Array.from({ length: 20 }, (_, seed) => JSON.stringify(fill(seed)))).size).toBe(
      3,
    );
    const plain = drum(beats('G7', 4, { bar: 3 }), grooveOf('driving-shuffle'), randomFrom(1));
    expect(strokes(plain, DRUMS.ride)).toHaveLength(8);
  });

  test('drum rests in a break', () => {
    expect(drum(beats(null, 4), grooveOf('boogie'), randomFrom(1))).toEqual([]);
  });

  // General MIDI 1, percussion key map (from memory).
  test('the drums are those of the General MIDI kit', () => {
    expect(DRUMS).toEqual({
      kick: 36,
      rim: 37,
      click: 37,
      snare: 38,
      hat: 42,
      pedalHat: 44,
      tom: 45,
      crash: 49,
      ride: 51,
    });
  });
});

describe('countOff', () => {
  test('countOff clicks once a beat, half a beat long, the first of a bar louder', () => {
    expect(countOff(1, 2880, 960)).toEqual(
      [0, 960, 1920].map((start) => ({
        start,
        duration: 480,
        pitch: DRUMS.click,
        velocity: start === 0 ? 104 : 82,
      })),
    );
    expect(countOff(0, 3840, 960)).toEqual([]);
  });
});
