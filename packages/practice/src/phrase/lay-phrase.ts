import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import {
  type Chord,
  itemAt,
  parseKey,
  ReedplateError,
  requireInteger,
  type ScaleDegree,
  toPitchClass,
} from '@reedplate/pitch';
import { barsOf, phraseChart, rootAbove, semitonesOf, soundingChord, tonicOf } from './harmony.js';
import type { Phrase } from './phrase.js';
import type { OtherHarmony } from './placed-phrase.js';

/** A note of a phrase in the time of a chart, before an octave is chosen. */
export interface LaidNote {
  /** Which note of the phrase, from 0. */
  readonly note: number;
  readonly start: number;
  readonly duration: number;
  /** Semitones above the tonic that the phrase asks for. */
  readonly wanted: number;
  /** Semitones above the tonic after the chord has had its say: a minor third over a minor chord. */
  readonly above: number;
  readonly chord: Chord | null;
  /** Whether it is a tone of its chord. */
  readonly isChordTone: boolean;
}

/** A phrase in the time of a chart. */
export interface LaidPhrase {
  /** Ticks before bar 1 of the line. */
  readonly pickup: number;
  readonly notes: readonly LaidNote[];
  readonly otherHarmony: readonly OtherHarmony[];
}

/** Puts a phrase at a bar of a chart: times, chords, and semitones above the tonic. */
export function layPhrase(phrase: Phrase, chart: Chart, bar: number): LaidPhrase {
  const bars = barsOf(phrase);
  requireInteger(bar, {
    min: 1,
    max: chart.bars - bars + 1,
    what: `a bar with ${bars} bars of the chart from it on`,
  });
  const time = timeOn(phrase, chart);
  const barTicks = parseMetre(chart.metre).barTicks;
  const before = time(phrase.pickup);
  // In bar 1 a pickup longer than the chart's makes the line begin earlier.
  const pickup = bar === 1 ? Math.max(before, chart.pickup) : chart.pickup;
  const origin = pickup + (bar - 1) * barTicks - before;
  const own = phraseChart(phrase, parseKey(chart.key).tonic);
  const notes = phrase.notes.map((note, index): LaidNote => {
    const start = origin + time(note.at);
    const duration = Math.max(1, origin + time(note.at + note.length) - start);
    const inChart = Math.max(start - pickup + chart.pickup, chart.pickup + (bar - 1) * barTicks);
    const chord = soundingChord(chart, inChart);
    const root = phrase.from === 'chord' ? rootAbove(chart, inChart) : 0;
    const wanted = root + semitonesOf(note.degree) + 12 * note.octave;
    const bent =
      phrase.from === 'chord' ? toneOf(note.degree, soundingChord(own, note.at), chord) : 0;
    const above = wanted + bent;
    return {
      note: index,
      start,
      duration,
      wanted,
      above,
      chord,
      isChordTone: isTone(above, chord, chart),
    };
  });
  return { pickup, notes, otherHarmony: othersOf(own, chart, bar) };
}

/** Whether semitones above the tonic of a chart are a tone of a chord. */
export function isTone(above: number, chord: Chord | null, chart: Chart): boolean {
  const pitchClass = toPitchClass(above + tonicOf(chart));
  return chord?.tones.some((tone) => tone.pitchClass === pitchClass) ?? false;
}

/**
 * How far a chord tone moves where the chord has the same step otherwise: a third over a minor chord
 * goes down by one.
 */
export function toneOf(degree: ScaleDegree, own: Chord | null, found: Chord | null): number {
  if (own === null || found === null) return 0;
  const at: number = semitonesOf(degree);
  const step = STEPS.find((steps) => steps.includes(at));
  if (step === undefined || !fromRoot(own).includes(at)) return 0;
  const there = fromRoot(found);
  if (there.includes(at)) return 0;
  const instead = there.find((each) => step.includes(each));
  return instead === undefined ? 0 : instead - at;
}

/** Semitones of the tones of a chord above its root. */
function fromRoot({ tones }: Chord): readonly number[] {
  const root = itemAt(tones, 0).pitchClass;
  return tones.map(({ pitchClass }) => toPitchClass(pitchClass - root));
}

/** Thirds, fifths and sevenths, by semitones above the root. */
const STEPS: readonly (readonly number[])[] = [
  [3, 4],
  [6, 7, 8],
  [9, 10, 11],
];

/** Ticks of a phrase as ticks of a chart: felt beat for felt beat. */
function timeOn(phrase: Phrase, chart: Chart): (tick: number) => number {
  const own = parseMetre(phrase.metre);
  const there = parseMetre(chart.metre);
  if (own.beatsPerBar !== there.beatsPerBar) {
    throw new ReedplateError({
      code: 'PHRASE_INVALID',
      value: chart.metre,
      expected: `a chart of ${own.beatsPerBar} felt beats a bar, as the phrase has`,
    });
  }
  if (own.beatTicks === there.beatTicks) return (tick) => tick;
  const warp = own.beatTicks < there.beatTicks ? widen : narrow;
  const isSwung = phrase.feel !== 'straight';
  return (tick) => {
    const beat = Math.floor(tick / own.beatTicks);
    const part = (tick - beat * own.beatTicks) / own.beatTicks;
    return Math.round((beat + (isSwung ? warp(part) : part)) * there.beatTicks);
  };
}

/** Swung eighths are written even in 4/4, and as long and short in 12/8. */
const LONG = 2 / 3;
const widen = (part: number): number =>
  part <= 0.5 ? part * 2 * LONG : LONG + (part - 0.5) * 2 * (1 - LONG);
const narrow = (part: number): number =>
  part <= LONG ? part / (2 * LONG) : 0.5 + (part - LONG) / (2 * (1 - LONG));

/** Where each bar of the phrase begins over a chord that is not the one it was made for. */
function othersOf(own: Chart, chart: Chart, bar: number): readonly OtherHarmony[] {
  return Array.from({ length: own.bars }, (_, index): OtherHarmony => {
    const span = (of: Chart, at: number) => of.spans.filter((each) => each.bar === at);
    const symbols = (of: Chart, at: number) =>
      span(of, at).flatMap(({ chord }) => (chord ? [chord.symbol] : []));
    return {
      bar: bar + index,
      madeFor: symbols(own, index + 1).join(' '),
      found: symbols(chart, bar + index).join(' ') || null,
    };
  }).filter(({ madeFor, found }) => madeFor !== found);
}
