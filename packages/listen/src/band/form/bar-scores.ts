import { scoreChords } from '../chords/score-chords.js';
import type { Chroma } from '../front/chroma.js';
import type { FormTable } from './form-table.js';

/** Beats of a sound laid out in bars. */
export interface Grid {
  readonly beatsPerBar: number;
  /** Seconds of every beat from the first bar line on; a whole number of bars, and the beat after the last. */
  readonly beats: readonly number[];
}

/** A chord that a bar may have whatever the form is. */
export interface FreeChord {
  /** Of the table's kinds. */
  readonly kind: number;
  /** Pitch class. */
  readonly root: number;
}

/** How well bars fit what is heard. */
export interface BarScores {
  readonly bars: number;
  /** Share of the whole sound that each bar lasts. */
  readonly shares: Float64Array;
  /** By `(bar of the table * 12 + tonic) * bars + bar`. */
  readonly ofForms: Float64Array;
  /** Best score of each bar with any chord, or any two. */
  readonly free: Float64Array;
  /** Best score of each bar with one chord. */
  readonly whole: Float64Array;
  /** Best score of each bar with one chord on another root than the best chord's. */
  readonly next: Float64Array;
  /** What chord fits best; two where they share the bar. */
  readonly freeChords: readonly (readonly FreeChord[])[];
}

/** Share of the score of one chord that two must be better by. */
const SECOND_CHORD = 0.3;

/** How well each bar of the table on each tonic fits each bar of a grid. */
export function scoreBars(
  chroma: Chroma,
  { beats, beatsPerBar }: Grid,
  table: FormTable,
  seconds: number,
): BarScores {
  const bars = Math.floor((beats.length - 1) / beatsPerBar);
  const chords = table.templates.length / 24;
  const ofForms = new Float64Array(table.bars.length * 12 * bars);
  const shares = new Float64Array(bars);
  const free = new Float64Array(bars);
  const next = new Float64Array(bars);
  const whole = new Float64Array(bars);
  const freeChords: (readonly FreeChord[])[] = [];
  const scores = table.stretches.map(() => new Float64Array(chords));
  for (let bar = 0; bar < bars; bar += 1) {
    const at = (share: number): number => secondOf(beats, (bar + share) * beatsPerBar);
    const [from, to] = [Math.max(0, at(0)), Math.min(seconds, at(1))];
    shares[bar] = Math.max(0, to - from) / seconds;
    for (const [index, [start, end]] of table.stretches.entries()) {
      const stretch = {
        from: at(start),
        to: at(end),
        first: at(Math.min(end, start + 1 / beatsPerBar)),
      };
      scoreChords(chroma, stretch, table.templates, scores[index] as Float64Array);
    }
    scoreFormBars(table, scores, ofForms, bar, bars);
    const best = bestFree(table, scores);
    free[bar] = best.score;
    next[bar] = best.next;
    whole[bar] = best.whole;
    freeChords.push(best.chords);
  }
  return { bars, shares, ofForms, free, whole, next, freeChords };
}

/** The second at which a beat lies, counted from 0 and with its fraction. */
export function secondOf(beats: readonly number[], beat: number): number {
  const before = Math.min(beats.length - 2, Math.floor(beat));
  const [here, next] = [beats[before] as number, beats[before + 1] as number];
  return here + (beat - before) * (next - here);
}

function scoreFormBars(
  table: FormTable,
  scores: readonly Float64Array[],
  ofForms: Float64Array,
  bar: number,
  bars: number,
): void {
  for (const [place, parts] of table.bars.entries()) {
    for (let tonic = 0; tonic < 12; tonic += 1) {
      let sum = 0;
      for (const { stretch, share, kind, root } of parts) {
        if (kind === null) continue;
        const ofStretch = scores[stretch] as Float64Array;
        sum += share * (ofStretch[kind * 12 + ((root + tonic) % 12)] as number);
      }
      ofForms[(place * 12 + tonic) * bars + bar] = sum;
    }
  }
}

function bestFree(
  table: FormTable,
  [whole, first, second]: readonly Float64Array[],
): {
  readonly score: number;
  readonly whole: number;
  readonly next: number;
  readonly chords: readonly FreeChord[];
} {
  const one = bestChord(table, whole as Float64Array);
  const next = bestChord(table, whole as Float64Array, one.chord.root).score;
  const two = [first, second].map((half) => bestChord(table, half as Float64Array));
  const halves = two.reduce((sum, { score }) => sum + score / 2, 0);
  const both = halves - SECOND_CHORD * Math.abs(one.score);
  if (both > one.score)
    return { score: both, whole: one.score, next, chords: two.map(({ chord }) => chord) };
  return { score: one.score, whole: one.score, next, chords: [one.chord] };
}

function bestChord({ freeKinds }: FormTable, scores: Float64Array, without = -1) {
  let score = Number.NEGATIVE_INFINITY;
  let chord: FreeChord = { kind: 0, root: 0 };
  for (const { kind } of freeKinds) {
    for (let root = 0; root < 12; root += 1) {
      const here = scores[kind * 12 + root] as number;
      if (here > score && root !== without) [score, chord] = [here, { kind, root }];
    }
  }
  return { score, chord };
}
