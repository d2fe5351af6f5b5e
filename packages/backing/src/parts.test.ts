import { parseChord } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { walkBass } from './bass.js';
import type { Beat } from './beats.js';
import { comp } from './comping.js';
import { countOff, DRUMS, drum } from './drums.js';

/** The beats of a bar under one chord; `null` for a break. */
function beats(
  symbol: string | null,
  count: number,
  { next, ticks = 960 }: Partial<{ next: string; ticks: number }> = {},
): readonly Beat[] {
  const chord = symbol === null ? null : parseChord(symbol);
  return Array.from({ length: count }, (_, at) => ({
    start: at * ticks,
    ticks,
    inBar: at,
    beatsPerBar: count,
    underChord: at,
    chord,
    next: next !== undefined && at === count - 1 ? parseChord(next) : undefined,
  }));
}

describe('walkBass', () => {
  // Common practice, no source: up the chord and down again, the sixth on top, the seventh in minor.
  test.each([
    ['G7', [31, 35, 38, 40, 43, 40, 38, 35]],
    ['G', [31, 35, 38, 40, 43, 40, 38, 35]],
    ['Gm7', [31, 34, 38, 41, 43, 41, 38, 34]],
    ['Gm6', [31, 34, 38, 40, 43, 40, 38, 34]],
    ['Gdim7', [31, 34, 37, 40, 43, 40, 37, 34]],
    ['Gsus4', [31, 36, 38, 40, 43, 40, 38, 36]],
    ['E7', [28, 32, 35, 37, 40, 37, 35, 32]],
    ['Eb7', [39, 43, 46, 48, 51, 48, 46, 43]],
  ])('walkBass walks over %s as %j, from the low E up', (symbol, walk) => {
    expect(walkBass(beats(symbol, 8)).map(({ pitch }) => pitch)).toEqual(walk);
  });

  test('walkBass comes to another chord by the semitone below its root, and holds each note a beat', () => {
    expect(walkBass(beats('G7', 4, { next: 'C7' }))).toEqual([
      { start: 0, duration: 960, pitch: 31 },
      { start: 960, duration: 960, pitch: 35 },
      { start: 1920, duration: 960, pitch: 38 },
      { start: 2880, duration: 960, pitch: 35 },
    ]);
    // A chord of one beat keeps its root.
    expect(walkBass(beats('G7', 1, { next: 'C7' }))[0]?.pitch).toBe(31);
    expect(walkBass(beats(null, 4))).toEqual([]);
  });
});

describe('comp', () => {
  test('comp plays the chord on the second and fourth beat, half a beat long, from F# up', () => {
    const chord = (start: number) =>
      [55, 59, 62, 65].map((pitch) => ({ start, duration: 480, pitch }));
    expect(comp(beats('G7', 4))).toEqual([...chord(960), ...chord(2880)]);
    expect(comp(beats('F#', 2)).map(({ pitch }) => pitch)).toEqual([54, 58, 61]);
    expect(comp(beats(null, 4))).toEqual([]);
  });

  test('comp leaves the root of a ninth chord to the bass, and plays every bar of one beat', () => {
    expect(comp(beats('G9', 2)).map(({ pitch }) => pitch)).toEqual([57, 59, 62, 65]);
    expect(comp(beats('G7', 1, { ticks: 1440 })).map(({ duration }) => duration)).toEqual([
      ...[720, 720, 720, 720],
    ]);
  });
});

describe('drum', () => {
  test('drum rides on halves of the beat, with kick and snare in turn', () => {
    expect(drum(beats('G7', 2))).toEqual([
      { start: 0, duration: 480, pitch: DRUMS.ride },
      { start: 480, duration: 480, pitch: DRUMS.ride },
      { start: 0, duration: 480, pitch: DRUMS.kick },
      { start: 960, duration: 480, pitch: DRUMS.ride },
      { start: 1440, duration: 480, pitch: DRUMS.ride },
      { start: 960, duration: 480, pitch: DRUMS.snare },
    ]);
  });

  test('drum rides on thirds of a dotted beat', () => {
    const rides = drum(beats('G7', 1, { ticks: 1440 })).filter(({ pitch }) => pitch === DRUMS.ride);
    expect(rides.map(({ start, duration }) => [start, duration])).toEqual([
      ...[
        [0, 480],
        [480, 480],
        [960, 480],
      ],
    ]);
  });

  // General MIDI 1, percussion key map (from memory).
  test('the drums are those of the General MIDI kit', () => {
    expect(DRUMS).toEqual({
      kick: 36,
      sideStick: 37,
      snare: 38,
      crash: 49,
      ride: 51,
    });
  });
});

describe('countOff', () => {
  test('countOff clicks once a beat, half a beat long', () => {
    expect(countOff(1, 2880, 960)).toEqual(
      [0, 960, 1920].map((start) => ({ start, duration: 480, pitch: DRUMS.sideStick })),
    );
    expect(countOff(2, 5760, 1440).map(({ start }) => start)).toEqual([
      ...[0, 1440, 2880, 4320, 5760, 7200, 8640, 10_080],
    ]);
    expect(countOff(0, 3840, 960)).toEqual([]);
  });
});
