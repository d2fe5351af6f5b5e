import { readFileSync } from 'node:fs';
import type { Chart, ChordSpan } from '@reedplate/form';
import { type Line, makeLine, type TimedNote } from '@reedplate/line';
import { type Chord, type KeyName, parseChord, parseKey } from '@reedplate/pitch';

/** A solo as it lies in the data file: see the file's own README for the fields. */
interface RawSolo {
  readonly id: number;
  readonly key: string;
  readonly bpm: number;
  readonly beats: readonly (readonly [number, number, number | null, number, string | null])[];
  readonly notes: readonly (readonly [
    number,
    number,
    number,
    number,
    number | null,
    number,
    number,
    number,
    number,
  ])[];
}

/** A solo with its true chart. */
export interface Solo {
  readonly id: number;
  readonly line: Line;
  readonly chart: Chart;
}

const BEAT = 960;
const BEATS_PER_BAR = 4;
const BAR = BEAT * BEATS_PER_BAR;

/** Where notes are put: on the annotated grid, or where they were played between the beats. */
export type Timing = 'written' | 'played';

/** Reads annotated solos, one JSON object a line; bars outside the form are left out. */
export function readSolos(path: string, timing: Timing = 'written'): readonly Solo[] {
  const rows = readFileSync(path, 'utf8')
    .split('\n')
    .filter((row) => row.trim() !== '');
  return rows.map((row) => readSolo(JSON.parse(row) as RawSolo, timing));
}

function readSolo(raw: RawSolo, timing: Timing): Solo {
  const inForm = raw.beats.filter(([, , barOfForm]) => barOfForm !== null);
  const firstBar = Math.min(...inForm.map(([bar]) => bar));
  const bars = Math.max(...inForm.map(([bar]) => bar)) - firstBar + 1;
  const chords = new Map<number, string>();
  for (const [bar, beat, , , chord] of inForm) {
    if (chord !== null) chords.set((bar - firstBar) * BEATS_PER_BAR + beat - 1, chord);
  }
  return {
    id: raw.id,
    line: makeLine(readNotes(raw, firstBar, bars, timing), { tempo: raw.bpm }),
    chart: makeChartOfBeats(keyOf(raw.key), fillBeats(chords, bars)),
  };
}

function keyOf(text: string): KeyName {
  const [tonic = 'C', mode] = text.split('-');
  return parseKey(mode === 'min' ? `${tonic}m` : tonic).name;
}

function readNotes(
  { notes, beats }: RawSolo,
  firstBar: number,
  bars: number,
  timing: Timing,
): readonly TimedNote[] {
  const toTick = tickReader(beats, firstBar);
  const read = notes.map(([bar, beat, tatum, division, , onset, , length, pitch]) => {
    const written = (bar - firstBar) * BAR + (beat - 1 + (tatum - 1) / division) * BEAT;
    return {
      start: Math.round(timing === 'written' ? written : toTick(onset)),
      duration: Math.max(1, Math.round(length * BEAT)),
      pitch,
    };
  });
  return read.filter(({ start }) => start >= 0 && start < bars * BAR);
}

/** Turns seconds into ticks, in proportion between one annotated beat and the next. */
function tickReader(beats: RawSolo['beats'], firstBar: number): (seconds: number) => number {
  const places = beats.map(([bar, beat, , seconds]) => ({
    seconds,
    tick: (bar - firstBar) * BAR + (beat - 1) * BEAT,
  }));
  return (seconds) => {
    const after = places.findIndex((place) => place.seconds > seconds);
    const low = places[Math.max(0, (after === -1 ? places.length - 1 : after) - 1)];
    const high = places[after === -1 ? places.length - 1 : Math.max(1, after)];
    if (low === undefined || high === undefined) return 0;
    return low.tick + ((seconds - low.seconds) / (high.seconds - low.seconds)) * BEAT;
  };
}

/** The chord of every beat; a beat without one keeps the chord before it. */
function fillBeats(chords: ReadonlyMap<number, string>, bars: number): readonly (Chord | null)[] {
  let last: Chord | null = null;
  return Array.from({ length: bars * BEATS_PER_BAR }, (_, beat) => {
    const symbol = chords.get(beat);
    if (symbol !== undefined) last = parseChord(symbol);
    return last;
  });
}

/** A chart from one chord a beat, in 4/4. */
export function makeChartOfBeats(key: KeyName, beats: readonly (Chord | null)[]): Chart {
  const spans: ChordSpan[] = [];
  beats.forEach((chord, beat) => {
    const last = spans.at(-1);
    const bar = Math.floor(beat / BEATS_PER_BAR) + 1;
    if (last?.bar === bar && last.chord === chord) {
      spans[spans.length - 1] = { ...last, end: last.end + BEAT };
      return;
    }
    const start = beat * BEAT;
    const place = { bar, barOfForm: bar, beat: (beat % BEATS_PER_BAR) + 1, chorus: 1 };
    spans.push({ ...place, start, end: start + BEAT, numeral: null, chord });
  });
  const bars = beats.length / BEATS_PER_BAR;
  return { form: 'solo', key, metre: '4/4', feel: 'straight', choruses: 1, pickup: 0, bars, spans };
}

/** The chord of every beat of a chart made by {@link makeChartOfBeats}. */
export function beatsOf({ spans }: Chart): readonly (Chord | null)[] {
  return spans.flatMap(({ start, end, chord }) =>
    Array.from({ length: (end - start) / BEAT }, () => chord),
  );
}
