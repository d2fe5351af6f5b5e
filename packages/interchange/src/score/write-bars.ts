import { chartEnd, chordChanges } from '@reedplate/form';
import { type Line, lineEnd, parseMetre, type TimedNote } from '@reedplate/line';
import { type Chord, ReedplateError } from '@reedplate/pitch';
import type { Sheet } from '../piece.js';

/** Notes that begin and end together within a bar, or a rest. */
export interface BarEvent {
  /** Ticks from the beginning of the bar. */
  readonly offset: number;
  readonly duration: number;
  /** MIDI numbers from the low end; none for a rest. */
  readonly pitches: readonly number[];
  /** Whether the notes began in the bar before. */
  readonly tiedFrom: boolean;
  /** Whether the notes go on in the bar after. */
  readonly tiedTo: boolean;
  /** What stands under the notes where they begin. */
  readonly word?: string;
}

/** A chord symbol of a bar; null for no chord. */
export interface BarChord {
  readonly offset: number;
  readonly chord: Chord | null;
}

/** A bar to be written: voices that each fill it, and its chord symbols. */
export interface WrittenBar {
  /** 0 for a pickup, else from 1. */
  readonly number: number;
  readonly length: number;
  readonly voices: readonly (readonly BarEvent[])[];
  readonly chords: readonly BarChord[];
  /** Times that the bars from the last `opens` on are played; 0 where no repeat ends. */
  readonly closes: number;
  readonly opens: boolean;
}

/** Most bars written: a note forgotten years later would ask for more. */
const MOST_BARS = 20_000;

/**
 * The bars of a line, those of the chart at least, with words under its notes in order.
 *
 * @throws ReedplateError `LINE_INVALID` for a line of more than 20,000 bars
 */
export function writeBars(
  line: Line,
  chart: Sheet['chart'],
  words: readonly string[] = [],
): readonly WrittenBar[] {
  const { barTicks } = parseMetre(line.metre);
  const chartBars = chart === undefined ? 0 : chartEnd(chart) - chart.pickup;
  const end = Math.max(lineEnd(line), line.pickup + chartBars, line.pickup + 1);
  const voices = toVoices(line.notes, words);
  const marks = chartMarks(chart, line.pickup);
  const frames = barFrames(line.pickup, barTicks, end);
  const share = { voices: voices.map(pointer), marks: pointer(marks) };
  return frames.map(({ number, start, length }) => ({
    number,
    length,
    voices: voicesWithin(share.voices, start, start + length),
    chords: share.marks.until(start + length).map(({ start: at, chord }) => ({
      offset: Math.max(0, at - start),
      chord,
    })),
    closes: 0,
    opens: false,
  }));
}

interface BarFrame {
  readonly number: number;
  readonly start: number;
  readonly length: number;
}

function barFrames(pickup: number, barTicks: number, end: number): readonly BarFrame[] {
  const bars = Math.ceil((end - pickup) / barTicks);
  if (bars > MOST_BARS) {
    const expected = `a line of at most ${MOST_BARS} bars`;
    throw new ReedplateError({ code: 'LINE_INVALID', value: bars, expected });
  }
  const whole = Array.from({ length: bars }, (_, at) => ({
    number: at + 1,
    start: pickup + at * barTicks,
    length: barTicks,
  }));
  return pickup === 0 ? whole : [{ number: 0, start: 0, length: pickup }, ...whole];
}

/** Notes that begin and end together, anywhere in a line. */
interface LineEvent {
  readonly start: number;
  readonly end: number;
  readonly pitches: readonly number[];
  readonly word?: string;
}

/** Notes as events, each in the first voice that is free when it begins. */
function toVoices(
  notes: readonly TimedNote[],
  words: readonly string[],
): readonly (readonly LineEvent[])[] {
  const voices: LineEvent[][] = [];
  let attack = -1;
  let lastStart = -1;
  for (const event of toEvents(notes)) {
    const isNewAttack = event.start !== lastStart;
    if (isNewAttack) attack += 1;
    lastStart = event.start;
    const word = isNewAttack ? words[attack] : undefined;
    const worded = word === undefined ? event : { ...event, word };
    const free = voices.find((voice) => (voice.at(-1)?.end ?? 0) <= event.start);
    if (free === undefined) voices.push([worded]);
    else free.push(worded);
  }
  return voices;
}

function toEvents(notes: readonly TimedNote[]): readonly LineEvent[] {
  const events = new Map<string, { start: number; end: number; pitches: number[] }>();
  for (const { start, duration, pitch } of notes) {
    const key = `${start} ${duration}`;
    const event = events.get(key);
    // Two notes of one pitch at once are two voices, not one chord.
    if (event === undefined) events.set(key, { start, end: start + duration, pitches: [pitch] });
    else if (!event.pitches.includes(pitch)) event.pitches.push(pitch);
    else events.set(`${key} ${events.size}`, { start, end: start + duration, pitches: [pitch] });
  }
  return [...events.values()].sort((a, b) => a.start - b.start);
}

interface ChordAt {
  readonly start: number;
  readonly chord: Chord | null;
}

/** Bar 1 of the chart is bar 1 of the line. */
function chartMarks(chart: Sheet['chart'], pickup: number): readonly ChordAt[] {
  if (chart === undefined) return [];
  return chordChanges(chart).map(({ start, chord }) => ({
    start: start - chart.pickup + pickup,
    chord,
  }));
}

/** Hands out a list in order, each item once. */
interface Pointer<Item> {
  /** The items not yet handed out that begin before a tick. */
  readonly until: (end: number) => readonly Item[];
  /** Puts an item back, to be handed out first. */
  readonly keep: (item: Item) => void;
}

function pointer<Item extends { readonly start: number }>(items: readonly Item[]): Pointer<Item> {
  let at = 0;
  let kept: readonly Item[] = [];
  return {
    until: (end) => {
      const first = at;
      while (at < items.length && (items[at]?.start ?? end) < end) at += 1;
      const found = [...kept, ...items.slice(first, at)];
      kept = [];
      return found;
    },
    keep: (item) => {
      kept = [item];
    },
  };
}

function voicesWithin(
  voices: readonly Pointer<LineEvent>[],
  start: number,
  end: number,
): readonly (readonly BarEvent[])[] {
  const filled = voices.map((voice) => fillBar(voice, start, end));
  // The first voice always fills the bar; another is written only where it sounds.
  const [first = [restOf(0, end - start)], ...others] = filled;
  return [first, ...others.filter((events) => events.some(({ pitches }) => pitches.length > 0))];
}

function fillBar(voice: Pointer<LineEvent>, start: number, end: number): readonly BarEvent[] {
  const events: BarEvent[] = [];
  let at = start;
  for (const event of voice.until(end)) {
    const from = Math.max(event.start, start);
    const to = Math.min(event.end, end);
    if (from > at) events.push(restOf(at - start, from - at));
    events.push({
      offset: from - start,
      duration: to - from,
      pitches: event.pitches,
      tiedFrom: event.start < start,
      tiedTo: event.end > end,
      ...(event.word === undefined || event.start < start ? {} : { word: event.word }),
    });
    if (event.end > end) voice.keep(event);
    at = to;
  }
  if (at < end) events.push(restOf(at - start, end - at));
  return events;
}

function restOf(offset: number, duration: number): BarEvent {
  return { offset, duration, pitches: [], tiedFrom: false, tiedTo: false };
}
