import type { BarScores } from './bar-scores.js';

/** What is given up, in scores of a whole bar, where a band leaves the form. Chosen on one half of the tracks. */
export const LEAVING = Object.freeze({
  /** Another chord for a bar. */
  otherChord: 0.5,
  /** A bar left out, or one added. */
  leap: 1.4,
  /** The form begun again before it has ended. */
  again: 2.1,
  /** Beginning within the form. */
  within: 0.9,
  /** A bar before the form begins or after it has ended. */
  outside: 0.55,
});

/** A form on a tonic: its bars by their place in the table. */
export interface Sought {
  readonly bars: readonly number[];
  readonly tonic: number;
}

/** How well bars follow a form, and which bar of it each is, from 0; null before it begins and after it ends. */
export interface Followed {
  readonly score: number;
  readonly path: readonly (number | null)[];
}

const BEFORE = -2;
const AFTER = -3;

/** How well a band follows a form, at best. */
export function formScore(scores: BarScores, sought: Sought): number {
  return follow(scores, sought, undefined);
}

/** The same, with the bar of the form that each bar is. */
export function followForm(scores: BarScores, sought: Sought): Followed {
  const steps = new Int32Array(scores.bars * (sought.bars.length + 1));
  const score = follow(scores, sought, steps);
  return { score, path: trace(steps, sought.bars.length, scores.bars) };
}

/** How a bar of the form is best come to; written over for each, since there are millions. */
interface Arrival {
  score: number;
  from: number;
}

/** Where a band may stand after a bar: in each bar of the form, still before it, or after it. */
interface Standing {
  /** Scores of the bars of the form. */
  before: Float64Array;
  waiting: number;
  ended: number;
  /** The best bar of the form, and its score. */
  top: number;
  topAt: number;
}

/**
 * The best path through the bars of a form (Viterbi 1967): each bar is the next of the form, unless a bar was left
 * out or added, or the form begun again.
 *
 * @param steps where given, filled by `bar * (length + 1) + place` with the place before; the last column is the
 * place at which the form ended
 */
function follow(
  { bars, shares, ofForms, free }: BarScores,
  { bars: places, tonic }: Sought,
  steps: Int32Array | undefined,
): number {
  const length = places.length;
  const rows = places.map((place) => (place * 12 + tonic) * bars);
  const nowhere = Number.NEGATIVE_INFINITY;
  const standing: Standing = {
    before: new Float64Array(length).fill(nowhere),
    waiting: 0,
    ended: nowhere,
    top: nowhere,
    topAt: 0,
  };
  const arrival: Arrival = { score: 0, from: BEFORE };
  let here = new Float64Array(length);
  for (let bar = 0; bar < bars; bar += 1) {
    const share = shares[bar] as number;
    const other = (free[bar] as number) - LEAVING.otherChord;
    const column = bar * (length + 1);
    for (let place = 0; place < length; place += 1) {
      arriveAt(place, standing, share, arrival);
      const own = ofForms[(rows[place] as number) + bar] as number;
      here[place] = arrival.score + share * Math.max(own, other);
      if (steps !== undefined) steps[column + place] = arrival.from;
    }
    if (steps !== undefined && bar > 0)
      steps[column + length] = standing.top > standing.ended ? standing.topAt : AFTER;
    const outside = share * Math.max(0, (free[bar] as number) - LEAVING.outside);
    standing.ended = Math.max(standing.ended, standing.top) + outside;
    standing.waiting += outside;
    [standing.before, here] = [here, standing.before as Float64Array<ArrayBuffer>];
    findTop(standing);
  }
  return finish(standing, steps, { length, bars });
}

/** The best way to come to a bar of the form: from outside, from the one before it, or by a leap. */
function arriveAt(place: number, standing: Standing, share: number, arrival: Arrival): void {
  const { before, waiting, top, topAt } = standing;
  const { length } = before;
  const leap = LEAVING.leap * share;
  arrival.score = waiting - (place === 0 ? 0 : LEAVING.within * share);
  arrival.from = BEFORE;
  const previous = place === 0 ? length - 1 : place - 1;
  const skipped = previous === 0 ? length - 1 : previous - 1;
  offer(arrival, before[previous] as number, previous);
  offer(arrival, (before[skipped] as number) - leap, skipped);
  offer(arrival, (before[place] as number) - leap, place);
  if (place === 0) offer(arrival, top - LEAVING.again * share, topAt);
}

function offer(arrival: Arrival, score: number, from: number): void {
  if (score <= arrival.score) return;
  arrival.score = score;
  arrival.from = from;
}

function findTop(standing: Standing): void {
  const { before } = standing;
  standing.topAt = 0;
  for (let place = 1; place < before.length; place += 1)
    if ((before[place] as number) > (before[standing.topAt] as number)) standing.topAt = place;
  standing.top = before[standing.topAt] as number;
}

/** The place that the path ends at is kept in the last column of the first row, which is not used else. */
function finish(
  { top, topAt, ended }: Standing,
  steps: Int32Array | undefined,
  { length, bars }: { readonly length: number; readonly bars: number },
): number {
  if (steps !== undefined && bars > 0) steps[length] = top >= ended ? topAt : AFTER;
  return Math.max(top, ended);
}

function trace(steps: Int32Array, length: number, bars: number): readonly (number | null)[] {
  const path: (number | null)[] = new Array(bars).fill(null);
  let at = bars === 0 ? BEFORE : (steps[length] as number);
  for (let bar = bars - 1; bar >= 0; bar -= 1) {
    if (at === BEFORE) break;
    if (at === AFTER) {
      at = bar === 0 ? BEFORE : (steps[bar * (length + 1) + length] as number);
      continue;
    }
    path[bar] = at;
    at = steps[bar * (length + 1) + at] as number;
  }
  return path;
}
