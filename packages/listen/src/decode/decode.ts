import { itemAt } from '@reedplate/pitch';
import type { Frame } from '../frames/frames.js';
import { type Likelihoods, likelihoodsOf } from './likelihoods.js';

/** What goes on in a frame: nothing, or a note, by its place among the pitches, beginning or held. */
export interface Moment {
  /** -1 for silence. */
  readonly note: number;
  readonly isAttack: boolean;
}

/** How loud the loudest playing is, and semitones that the instrument is tuned above A4 = 440 hertz. */
export interface Setting {
  readonly loudest: number;
  readonly offset: number;
}

/** Logarithms of the chances with which things go on or change from one frame to the next. */
const STAY_SILENT = Math.log(0.97);
const BEGIN = Math.log(0.03);
const STAY_IN_ATTACK = Math.log(0.85);
const HOLD = Math.log(0.15);
const STAY_HELD = Math.log(0.96);
const END = Math.log(0.01);
const CHANGE = Math.log(0.03);
/** Decibels of rise within a note from which on it was rather struck anew than not, and what each more says. */
const STRUCK = 5;
const STRUCK_SLOPE = 1.5;
const MOST_STRUCK = 12;

/**
 * The likeliest course of silence and notes under all frames together: a hidden Markov model, its best path
 * found exactly by dynamic programming (Viterbi, Error bounds for convolutional codes, IEEE Transactions on
 * Information Theory 13, 1967). A note begins with an attack, in which the pitch may glide to it, and is then
 * held; the same note begins again only where the loudness rises.
 */
export function decode(
  frames: readonly Frame[],
  pitches: readonly number[],
  { loudest, offset }: Setting,
): readonly Moment[] {
  const count = pitches.length;
  const change = CHANGE - Math.log(count);
  const begin = BEGIN - Math.log(count);
  // States: 0 is silence, 1 + n the attack of pitch n, 1 + count + n its being held.
  let score: Float64Array = new Float64Array(2 * count + 1).fill(Number.NEGATIVE_INFINITY);
  score[0] = 0;
  const from = frames.map(() => new Int16Array(2 * count + 1));
  for (const [at, frame] of frames.entries()) {
    const told = likelihoodsOf(frame, pitches, loudest, offset);
    const struck = Math.min(MOST_STRUCK, STRUCK_SLOPE * (frame.rise - STRUCK));
    const repeat = change + struck;
    score = step(score, told, { count, change, begin, repeat }, itemAt(from, at));
  }
  return trace(score, from, count);
}

interface Chances {
  readonly count: number;
  readonly change: number;
  readonly begin: number;
  readonly repeat: number;
}

/** The scores after one more frame, and for each state which it came from. */
function step(
  before: Float64Array,
  { silence, held, attack }: Likelihoods,
  chances: Chances,
  from: Int16Array,
): Float64Array {
  const { count } = chances;
  const after = new Float64Array(before.length);
  const best = twoBest(before, count + 1);
  const enter = (state: number, { source, score }: Way, likelihood: number): void => {
    after[state] = score + likelihood;
    from[state] = source;
  };
  const scoreOf = (state: number): number => itemAt(before, state);
  enter(0, better(way(0, scoreOf(0) + STAY_SILENT), way(best[0], scoreOf(best[0]) + END)), silence);
  for (let note = 0; note < count; note += 1) {
    const attackAt = 1 + note;
    const heldAt = 1 + count + note;
    enter(attackAt, wayToAttack(scoreOf, note, best, chances), itemAt(attack, note));
    const settles = way(attackAt, scoreOf(attackAt) + HOLD);
    enter(heldAt, better(way(heldAt, scoreOf(heldAt) + STAY_HELD), settles), itemAt(held, note));
  }
  return after;
}

/** The best way into the attack of a note: on from itself, out of silence, after another note, or struck anew. */
function wayToAttack(
  scoreOf: (state: number) => number,
  note: number,
  [first, second]: readonly [number, number],
  { count, change, begin, repeat }: Chances,
): Way {
  const attackAt = 1 + note;
  const heldAt = 1 + count + note;
  const other = first === heldAt ? second : first;
  return [
    way(0, scoreOf(0) + begin),
    way(other, scoreOf(other) + change),
    way(heldAt, scoreOf(heldAt) + repeat),
  ].reduce(better, way(attackAt, scoreOf(attackAt) + STAY_IN_ATTACK));
}

/** A state that another may have come from, and the score of having done so. */
interface Way {
  readonly source: number;
  readonly score: number;
}

const way = (source: number, score: number): Way => ({ source, score });

function better(a: Way, b: Way): Way {
  return b.score > a.score ? b : a;
}

/** The two states with the highest scores, from a place on. */
function twoBest(scores: Float64Array, start: number): readonly [number, number] {
  let first = start;
  let second = start;
  for (let at = start + 1; at < scores.length; at += 1) {
    const score = itemAt(scores, at);
    if (score > itemAt(scores, first)) [first, second] = [at, first];
    else if (second === first || score > itemAt(scores, second)) second = at;
  }
  return [first, second];
}

function trace(last: Float64Array, from: readonly Int16Array[], count: number): readonly Moment[] {
  const moments: Moment[] = [];
  let state = last.indexOf(Math.max(...last));
  for (let at = from.length - 1; at >= 0; at -= 1) {
    moments.push({
      note: state === 0 ? -1 : (state - 1) % count,
      isAttack: state > 0 && state <= count,
    });
    state = itemAt(itemAt(from, at), state);
  }
  return moments.reverse();
}
