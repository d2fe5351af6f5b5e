import { chartEnd, chordChanges } from '@reedplate/form';
import { type Line, lineEnd, parseMetre, tickAt } from '@reedplate/line';
import type { Chord } from '@reedplate/pitch';
import type { Sheet } from '../piece.js';
import { requireBars } from './bar-limits.js';
import { type Attack, type LineEvent, toVoices } from './line-events.js';

/** Notes that begin and end together within a bar, or a rest. */
export interface BarEvent extends Attack {
  /** Ticks from the beginning of the bar. */
  readonly offset: number;
  readonly duration: number;
  /** MIDI numbers from the low end; none for a rest. */
  readonly pitches: readonly number[];
  /** The chord that the notes began over, which spells them. */
  readonly chord?: Chord;
  /** Whether the notes began in the bar before. */
  readonly tiedFrom: boolean;
  /** Whether the notes go on in the bar after. */
  readonly tiedTo: boolean;
}

/** A chord symbol of a bar; null for no chord. */
export interface BarChord {
  readonly offset: number;
  readonly chord: Chord | null;
}

/** A new tempo within a bar. */
export interface BarTempo {
  readonly offset: number;
  /** Felt beats a minute. */
  readonly tempo: number;
}

/** A bar to be written: voices that each fill it, and its chord symbols. */
export interface WrittenBar {
  /** 0 for a pickup, 0 and below for bars counted in, else from 1. */
  readonly number: number;
  readonly length: number;
  readonly voices: readonly (readonly BarEvent[])[];
  readonly chords: readonly BarChord[];
  readonly tempos: readonly BarTempo[];
  /** Times that the bars from the last `opens` on are played; 0 where no repeat ends. */
  readonly closes: number;
  readonly opens: boolean;
}

/**
 * The bars of a line, those of the chart at least, with words under its notes in order.
 *
 * @throws ReedplateError `LINE_INVALID` for a line of more bars than its notes give a sense to, 20,000 at
 *   most, and for more than 64 notes that overlap
 */
export function writeBars(
  line: Line,
  chart: Sheet['chart'],
  words: readonly string[] = [],
): readonly WrittenBar[] {
  const { barTicks } = parseMetre(line.metre);
  const chartBars = chart === undefined ? 0 : chartEnd(chart) - chart.pickup;
  const barOne = tickAt({ bar: 1, beat: 1 }, line);
  const { countIn = 0, pickup, tempoChanges = [] } = line;
  const end = Math.max(lineEnd(line), barOne + chartBars, barOne + 1);
  const bars = Math.ceil((end - pickup) / barTicks);
  requireBars(line, bars, Math.ceil((barOne - pickup + chartBars) / barTicks));
  const marks = chartMarks(chart, barOne);
  const voices = toVoices(line.notes, words).map((voice) => overChords(voice, marks));
  const frames = barFrames({ pickup, countIn, barTicks, bars });
  const share = {
    voices: voices.map(pointer),
    marks: pointer(marks),
    tempos: pointer(tempoChanges),
  };
  return frames.map(({ number, start, length }) => ({
    number,
    length,
    voices: voicesWithin(share.voices, start, start + length),
    chords: share.marks.until(start + length).map(({ start: at, chord }) => ({
      offset: Math.max(0, at - start),
      chord,
    })),
    tempos: share.tempos.until(start + length).map(({ start: at, tempo }) => ({
      offset: at - start,
      tempo,
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

interface Extent {
  readonly pickup: number;
  readonly countIn: number;
  readonly barTicks: number;
  readonly bars: number;
}

function barFrames({ pickup, countIn, barTicks, bars }: Extent): readonly BarFrame[] {
  const whole = Array.from({ length: bars }, (_, at) => ({
    number: at + 1 - countIn,
    start: pickup + at * barTicks,
    length: barTicks,
  }));
  return pickup === 0 ? whole : [{ number: 0, start: 0, length: pickup }, ...whole];
}

interface ChordAt {
  readonly start: number;
  readonly chord: Chord | null;
}

/** Bar 1 of the chart is bar 1 of the line. */
function chartMarks(chart: Sheet['chart'], barOne: number): readonly ChordAt[] {
  if (chart === undefined) return [];
  return chordChanges(chart).map(({ start, chord }) => ({
    start: start - chart.pickup + barOne,
    chord,
  }));
}

/** The events of a voice, each with the chord that it begins over. */
function overChords(events: readonly LineEvent[], marks: readonly ChordAt[]): readonly LineEvent[] {
  let next = 0;
  return events.map((event) => {
    while ((marks[next]?.start ?? Number.POSITIVE_INFINITY) <= event.start) next += 1;
    const chord = marks[next - 1]?.chord ?? undefined;
    return chord === undefined ? event : { ...event, chord };
  });
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
      ...(event.chord === undefined ? {} : { chord: event.chord }),
      tiedFrom: event.start < start,
      tiedTo: event.end > end,
      ...(event.start < start ? {} : attackOf(event)),
    });
    if (event.end > end) voice.keep(event);
    at = to;
  }
  if (at < end) events.push(restOf(at - start, end - at));
  return events;
}

function attackOf({ word, played, graces }: Attack): Attack {
  return {
    ...(word === undefined ? {} : { word }),
    ...(played === undefined ? {} : { played }),
    ...(graces === undefined ? {} : { graces }),
  };
}

function restOf(offset: number, duration: number): BarEvent {
  return { offset, duration, pitches: [], tiedFrom: false, tiedTo: false };
}
