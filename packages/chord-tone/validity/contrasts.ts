import { makeLine } from '@reedplate/line';
import {
  type Chord,
  parseChord,
  parseKey,
  spell,
  toPitchClass,
  transposeKey,
} from '@reedplate/pitch';
import { beatsOf, makeChartOfBeats, type Solo } from './read-solos.js';

/** A seeded source of numbers from 0 (inclusive) to 1 (exclusive). */
export type Random = () => number;

/** The mulberry32 generator (public domain): small, and the same on every machine. */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** A wrong pairing of line and chart, to be outscored by the true one. */
export interface Contrast {
  readonly name: string;
  /** Makes it; a shuffle gives another each time. */
  readonly make: (solo: Solo, random: Random) => Solo;
  /** How often it is made for a solo. */
  readonly times: number;
}

const SHIFTS = [1, 2, 4, 6] as const;
const BEATS_PER_BAR = 4;

/** Every contrast of the report. */
export function contrasts(shuffles: number): readonly Contrast[] {
  const intervals = Array.from({ length: 11 }, (_, index) => index + 1);
  return [
    ...intervals.map((semitones) => once(`up ${semitones}`, (solo) => transposed(solo, semitones))),
    ...SHIFTS.map((bars) => once(`late ${bars}`, (solo) => rotated(solo, bars))),
    ...SHIFTS.map((bars) => once(`early ${bars}`, (solo) => rotated(solo, -bars))),
    { name: 'bars shuffled', make: withBarsShuffled, times: shuffles },
    { name: 'pitches shuffled', make: withPitchesShuffled, times: shuffles },
  ];
}

function once(name: string, make: (solo: Solo) => Solo): Contrast {
  return { name, make, times: 1 };
}

/** The chart, key and all, moved up. */
function transposed(solo: Solo, semitones: number): Solo {
  const key = transposeKey(parseKey(solo.chart.key), semitones);
  const moved = new Map<Chord, Chord>();
  const beats = beatsOf(solo.chart).map((chord) => {
    if (chord === null) return null;
    const known = moved.get(chord);
    if (known !== undefined) return known;
    const root = spell(toPitchClass((chord.tones[0]?.pitchClass ?? 0) + semitones), key);
    const up = parseChord(`${root}${chord.quality}`);
    moved.set(chord, up);
    return up;
  });
  return { ...solo, chart: makeChartOfBeats(key.name, beats) };
}

/** The chart late by so many bars, its end going round to its beginning. */
function rotated(solo: Solo, bars: number): Solo {
  const beats = beatsOf(solo.chart);
  const by = (((bars * BEATS_PER_BAR) % beats.length) + beats.length) % beats.length;
  const turned = [...beats.slice(beats.length - by), ...beats.slice(0, beats.length - by)];
  return { ...solo, chart: makeChartOfBeats(solo.chart.key, turned) };
}

function withBarsShuffled(solo: Solo, random: Random): Solo {
  const beats = beatsOf(solo.chart);
  const order = shuffled(
    Array.from({ length: solo.chart.bars }, (_, bar) => bar),
    random,
  );
  const moved = order.flatMap((bar) => beats.slice(bar * BEATS_PER_BAR, (bar + 1) * BEATS_PER_BAR));
  return { ...solo, chart: makeChartOfBeats(solo.chart.key, moved) };
}

function withPitchesShuffled(solo: Solo, random: Random): Solo {
  const pitches = shuffled(
    solo.line.notes.map(({ pitch }) => pitch),
    random,
  );
  const notes = solo.line.notes.map((note, index) => ({ ...note, pitch: pitches[index] ?? 0 }));
  return { ...solo, line: makeLine(notes) };
}

/** Fisher and Yates. */
export function shuffled<Item>(items: readonly Item[], random: Random): readonly Item[] {
  const order = [...items];
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = Math.floor(random() * (last + 1));
    [order[last], order[other]] = [order[other] as Item, order[last] as Item];
  }
  return order;
}
