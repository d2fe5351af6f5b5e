import { type Compare, type Known, midiOf } from './tonal-names.js';

// A line and a chart by name: checked, ties joined, cut where the chord changes.

/** A note by name, timed in ticks. */
export interface NamedTime {
  readonly name: string;
  readonly start: number;
  readonly duration: number;
}

/** A chord by symbol, timed in ticks; no symbol is silence. */
export interface NamedSpan {
  readonly symbol: string;
  readonly numeral: string | null;
  readonly start: number;
  readonly end: number;
  readonly chorus: number;
  readonly bar: number;
  readonly beat: number;
}

/** A chart by names. */
export interface NamedChart {
  readonly pickup: number;
  readonly barTicks: number;
  readonly beatTicks: number;
  readonly spans: readonly NamedSpan[];
}

/** A note with its ties joined. */
export interface Sounded {
  readonly index: number;
  readonly name: string;
  readonly midi: number;
  readonly start: number;
  end: number;
  /** Its place among the sounded notes, and its parts among all parts. */
  readonly place: number;
  firstPart: number;
  parts: number;
}

/** The part of a note that sounds over one chord. */
export interface Part {
  readonly note: Sounded;
  readonly start: number;
  readonly end: number;
  readonly clock: number;
  /** What it is over the chord it belongs to, and the change of that chord. */
  readonly known: Known;
  readonly change: number;
  /** Symbols of the chord that sounds, and of the one it may belong to. */
  readonly here: string;
  readonly coming: string;
  /** Whether it is a tone of the chord that sounds, or of the coming one it is struck before. */
  readonly isTone: boolean;
}

/** Neighbouring spans of a chord made one, after the silence before the first. */
export function namedChanges({ spans }: NamedChart): readonly NamedSpan[] {
  const before = { symbol: '', numeral: null, start: -Infinity, end: -Infinity };
  const changes: NamedSpan[] = [{ ...before, chorus: 0, bar: 0, beat: 1 }];
  for (const span of spans) {
    const last = changes[changes.length - 1] as NamedSpan;
    const goesOn = last.symbol === span.symbol && last.chorus === span.chorus;
    if (goesOn && last.end === span.start) changes.splice(-1, 1, { ...last, end: span.end });
    else changes.push(span);
  }
  return changes;
}

/** The notes as they are heard: ties joined, grace notes taken in. */
export function soundedNotes(
  line: readonly NamedTime[],
  chart: Pick<NamedChart, 'pickup' | 'beatTicks'>,
): readonly Sounded[] {
  const kept: Sounded[] = [];
  let [from, until] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const note of [...joinedNotes(line)].reverse()) {
    const own = kept.at(-1);
    const length = note.end - note.start;
    const leads = from > note.start && Math.abs(from - note.end) <= chart.beatTicks / 16;
    const isGrace = leads && length < chart.beatTicks / 8 && own && own.end - own.start > length;
    if (!isGrace) {
      kept.push(note.end === from && until > from ? { ...note, end: until } : note);
      [from, until] = [note.start, note.start];
      continue;
    }
    from = note.start;
    if (offGrid(from, chart) >= offGrid(own.start, chart)) continue;
    kept[kept.length - 1] = { ...own, start: from };
    until = from;
  }
  return kept.reverse().map((note, place) => ({ ...note, place }));
}

/** Beats from the nearest quarter or third of a beat. */
function offGrid(
  tick: number,
  { pickup, beatTicks }: Pick<NamedChart, 'pickup' | 'beatTicks'>,
): number {
  const beats = (tick - pickup) / beatTicks;
  const quarters = Math.abs(beats - Math.round(4 * beats) / 4);
  return Math.min(quarters, Math.abs(beats - Math.round(3 * beats) / 3));
}

/** Checks every note and joins those of one pitch that touch. */
function joinedNotes(line: readonly NamedTime[]): readonly Sounded[] {
  const notes: Sounded[] = [];
  const latest = new Map<number, Sounded>();
  let [lastStart, lastMidi] = [0, 0];
  for (let index = 0; index < line.length; index += 1) {
    const { name, start, duration } = line[index] as NamedTime;
    const midi = midiOf(name);
    const isTimed = Number.isInteger(start) && Number.isInteger(duration) && duration >= 1;
    const isInOrder = start > lastStart || (start === lastStart && midi >= lastMidi);
    if (!isTimed || !isInOrder) throw new Error(`note ${index}`);
    [lastStart, lastMidi] = [start, midi];
    const before = latest.get(midi);
    if (before?.end === start) {
      before.end = start + duration;
      continue;
    }
    const place = notes.length;
    const note = { index, name, midi, start, end: start + duration, place, firstPart: 0, parts: 0 };
    notes.push(note);
    latest.set(midi, note);
  }
  return notes;
}

/** How notes are cut. */
export interface Cutting {
  readonly changes: readonly NamedSpan[];
  readonly compare: Compare;
  /** Ticks before a change from which a note may belong to the coming chord. */
  readonly pushWithin: number;
}

/** Cuts notes at the changes; what lies outside the chart falls away. */
export function cutNotes(notes: readonly Sounded[], cutting: Cutting): readonly Part[] {
  const { changes } = cutting;
  const parts: Part[] = [];
  const chartEnd = changes[changes.length - 1]?.end ?? 0;
  let at = 0;
  for (const note of notes) {
    note.firstPart = parts.length;
    if (note.start >= chartEnd || note.end <= 0) continue;
    const end = Math.min(note.end, chartEnd);
    while ((changes[at + 1]?.start ?? Infinity) <= note.start) at += 1;
    let start = note.start;
    for (let clock = at; start < end; clock += 1) {
      const stop = Math.min(end, changes[clock + 1]?.start ?? chartEnd);
      parts.push(makePart(note, start, stop, clock, cutting));
      start = stop;
    }
    note.parts = parts.length - note.firstPart;
  }
  return parts;
}

/** A note struck just before a change belongs to it where it is a tone of that chord alone. */
function makePart(
  note: Sounded,
  start: number,
  end: number,
  clock: number,
  { changes, compare, pushWithin }: Cutting,
): Part {
  const { symbol } = changes[clock] as NamedSpan;
  const here = compare(symbol, note.name);
  const coming = changes[clock + 1];
  const mayPush =
    start === note.start && coming !== undefined && coming.start - start <= pushWithin;
  const there = mayPush ? compare(coming.symbol, note.name) : here;
  const push = there.tone > here.tone;
  const isTone = here.tone === 1 || there.tone === 1;
  return {
    note,
    start,
    end,
    clock,
    here: symbol,
    coming: mayPush ? coming.symbol : symbol,
    known: push ? there : here,
    change: push ? clock + 1 : clock,
    isTone,
  };
}
