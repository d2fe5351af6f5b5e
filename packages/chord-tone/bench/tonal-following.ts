import { SCORE_WEIGHTS } from '@reedplate/chord-tone';
import { Note } from 'tonal';
import { judgeParts, type NamedJudged, namedFit } from './tonal-judge.js';
import { cutNotes, type NamedChart, type NamedSpan, type Sounded } from './tonal-line.js';
import { type Compare, chordOf, midiOf } from './tonal-names.js';

// Chance, following and the other readings of a take, on note names.

/** A take by names, ready to be read over any chords. */
export interface NamedTake {
  readonly notes: readonly Sounded[];
  readonly chart: NamedChart;
  readonly compare: Compare;
}

/** Judges the notes of a take over chords. */
export function judgeOver(take: NamedTake, changes: readonly NamedSpan[]): readonly NamedJudged[] {
  const { notes, chart, compare } = take;
  const pushWithin = SCORE_WEIGHTS.pushWithin * chart.beatTicks;
  return judgeParts(notes, cutNotes(notes, { changes, compare, pushWithin }), chart);
}

/** Ticks of each chord. */
function timesOf(changes: readonly NamedSpan[]): ReadonlyMap<string, number> {
  const times = new Map<string, number>();
  for (const { symbol, start, end } of changes) {
    if (symbol !== '') times.set(symbol, (times.get(symbol) ?? 0) + end - start);
  }
  return times;
}

/** The chord fit over each chord held throughout, by the time it has. */
export function namedBlind(take: NamedTake, changes: readonly NamedSpan[]): number | null {
  const [before, first] = changes as readonly [NamedSpan, NamedSpan];
  const end = changes[changes.length - 1]?.end ?? 0;
  let [sum, total] = [0, 0];
  for (const [symbol, time] of timesOf(changes)) {
    const chordFit = namedFit(judgeOver(take, [before, { ...first, end, symbol }]));
    if (chordFit === null) continue;
    sum += time * chordFit;
    total += time;
  }
  return total === 0 ? null : sum / total;
}

/** The mean chord fit over every pitch drawn for a note and for the one after it. */
export function namedShuffled(
  judged: readonly NamedJudged[],
  { chart, compare }: NamedTake,
): number | null {
  const shares = sharesOf(judged);
  const within = SCORE_WEIGHTS.resolveWithin * chart.beatTicks;
  const means = new Map<string, number>();
  let [sum, total] = [0, 0];
  let after: NamedJudged | undefined;
  let here: NamedJudged | undefined;
  for (let at = judged.length - 1; at >= 0; at -= 1) {
    const one = judged[at] as NamedJudged;
    const { part, weight } = one;
    const isApart =
      here !== undefined && here.part.note.start - part.note.start > chart.beatTicks / 16;
    if (isApart) after = here;
    if (part.start === part.note.start) here = one;
    if (weight === 0) continue;
    const wait = (after?.part.note.start ?? 0) - part.start;
    const isLast = part.end === Math.min(part.note.end, chartEnd(chart));
    const next = isLast && after !== undefined && wait > 0 && wait <= within ? after : undefined;
    const key = `${part.here}|${part.coming}|${next?.part.here}|${next?.part.coming}`;
    let mean = means.get(key);
    if (mean === undefined) {
      mean = meanCredit(one, next, shares, compare);
      means.set(key, mean);
    }
    sum += weight * mean;
    total += weight;
  }
  return total === 0 ? null : sum / total;
}

function chartEnd({ spans }: NamedChart): number {
  return spans[spans.length - 1]?.end ?? 0;
}

/** Names with their shares of the weight. */
function sharesOf(judged: readonly NamedJudged[]): ReadonlyMap<string, number> {
  const shares = new Map<string, number>();
  let total = 0;
  for (const { part, weight } of judged) {
    shares.set(part.note.name, (shares.get(part.note.name) ?? 0) + weight);
    total += weight;
  }
  for (const [name, weight] of shares) shares.set(name, weight / total);
  return shares;
}

function meanCredit(
  { part }: NamedJudged,
  next: NamedJudged | undefined,
  shares: ReadonlyMap<string, number>,
  compare: Compare,
): number {
  const { credit, resolvedCredit } = SCORE_WEIGHTS;
  let mean = 0;
  for (const [name, share] of shares) {
    const here = compare(part.here, name);
    const coming = compare(part.coming, name);
    const known = coming.tone > here.tone ? coming : here;
    const resting = credit[known.resting];
    const isTone = here.tone === 1 || coming.tone === 1;
    const likely =
      isTone || next === undefined ? 0 : chanceOfStep(known.midi, next, shares, compare);
    mean += share * (likely * Math.max(resting, resolvedCredit) + (1 - likely) * resting);
  }
  return mean;
}

function chanceOfStep(
  from: number,
  { part }: NamedJudged,
  shares: ReadonlyMap<string, number>,
  compare: Compare,
): number {
  let likely = 0;
  for (const [name, share] of shares) {
    const step = Math.abs(midiOf(name) - from);
    if (step === 0 || step > 2) continue;
    const isTone = compare(part.here, name).tone === 1 || compare(part.coming, name).tone === 1;
    if (isTone) likely += share;
  }
  return likely;
}

/** What a take would fit if it were read otherwise. */
export interface NamedReading {
  readonly kind: keyof typeof SCORE_WEIGHTS.faults;
  readonly by: number;
  readonly chordFit: number;
}

/** Fits of the readings that scoreLine takes, in its order. */
export function namedReadings(
  take: NamedTake,
  changes: readonly NamedSpan[],
  tonic: string,
): readonly NamedReading[] {
  const fitOn = (spans: readonly NamedSpan[]): number => namedFit(judgeOver(take, spans)) ?? 0;
  const { barTicks, beatTicks } = take.chart;
  const readings: NamedReading[] = [];
  for (const by of [-5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6]) {
    const moved = { ...take, notes: take.notes.map((note) => transposed(note, (12 - by) % 12)) };
    readings.push({ kind: 'other-harp', by, chordFit: namedFit(judgeOver(moved, changes)) ?? 0 });
  }
  for (const by of [-2, -1, 1, 2]) {
    readings.push({
      kind: 'bars-off',
      by,
      chordFit: fitOn(turned(take.chart, changes, by * barTicks)),
    });
  }
  for (const by of [-1, 1]) {
    readings.push({
      kind: 'beats-off',
      by,
      chordFit: fitOn(turned(take.chart, changes, by * beatTicks)),
    });
  }
  return [...readings, ...staticReadings(changes, tonic, fitOn)];
}

const moved = new Map<string, string>();

function transposed(note: Sounded, semitones: number): Sounded {
  const midi = note.midi + semitones;
  const key = `${midi}`;
  let name = moved.get(key);
  if (name === undefined) {
    name = Note.fromMidi(midi);
    moved.set(key, name);
  }
  return { ...note, name, midi };
}

function turned(
  { pickup }: NamedChart,
  changes: readonly NamedSpan[],
  ticks: number,
): readonly NamedSpan[] {
  const end = changes[changes.length - 1]?.end ?? 0;
  const length = end - pickup;
  const [before, ...rest] = changes as readonly [NamedSpan, ...NamedSpan[]];
  const spans: NamedSpan[] = [];
  for (const span of rest) {
    if (span.end <= pickup) continue;
    const own = Math.max(span.start, pickup);
    const start = pickup + ((((own - pickup + ticks) % length) + length) % length);
    const stop = start + span.end - own;
    spans.push({ ...span, start, end: Math.min(stop, end) });
    if (stop > end) spans.push({ ...span, start: pickup, end: stop - length });
  }
  spans.sort((a, b) => a.start - b.start);
  return [before, ...spans];
}

function staticReadings(
  changes: readonly NamedSpan[],
  tonic: string,
  fitOn: (spans: readonly NamedSpan[]) => number,
): readonly NamedReading[] {
  const above = (symbol: string): number =>
    (midiOf(`${chordOf(symbol).tonic ?? 'C'}4`) - midiOf(`${tonic}4`) + 24) % 12;
  const times = timesOf(changes);
  let home: string | undefined;
  for (const [symbol, time] of times) {
    if (above(symbol) === 0 && time > (times.get(home ?? '') ?? 0)) home = symbol;
  }
  if (home === undefined) return [];
  const symbol = home;
  const replaced = (isMissed: (symbol: string) => boolean): number =>
    fitOn(
      joined(
        changes.map((span) =>
          span.symbol !== '' && isMissed(span.symbol) ? { ...span, symbol } : span,
        ),
      ),
    );
  const missed = [5, 7].filter((by) => [...times.keys()].some((one) => above(one) === by));
  return [
    { kind: 'one-chord', by: 0, chordFit: replaced(() => true) },
    ...missed.map((by) => ({
      kind: 'chord-missed' as const,
      by,
      chordFit: replaced((one) => above(one) === by),
    })),
  ];
}

function joined(changes: readonly NamedSpan[]): readonly NamedSpan[] {
  const spans: NamedSpan[] = [];
  for (const span of changes) {
    const last = spans[spans.length - 1];
    if (last?.symbol === span.symbol && last.end === span.start) {
      spans[spans.length - 1] = { ...last, end: span.end };
    } else spans.push(span);
  }
  return spans;
}
