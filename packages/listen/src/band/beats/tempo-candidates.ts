import type { Onsets } from '../front/onsets.js';

/** Felt beats a minute that are looked for. */
const SLOWEST = 50;
const FASTEST = 190;

/** Ratios that one level of a rhythm stands in to another. */
const RELATED = [1, 2, 1 / 2, 3, 1 / 3, 3 / 2, 2 / 3, 4, 1 / 4, 4 / 3, 3 / 4] as const;

/** Levels of the rhythm that are looked at with all that is related to them. */
const LEVELS = 3;

/** Beats so near to one another are the same. */
const SAME = 0.03;

/** Multiples of a beat at which it should come again. */
const MULTIPLES = 4;

/**
 * Beat lengths, in seconds, that a sound may have: those after which its onsets come again, and what is related to
 * them as one level of a rhythm to another. The likeliest first.
 */
export function beatLengths({ all, hop }: Onsets, most: number): readonly number[] {
  const longest = Math.ceil((60 / SLOWEST / hop) * MULTIPLES) + 2;
  const again = autocorrelation(all, longest);
  const strengthOf = (seconds: number): number => {
    let sum = 0;
    for (let times = 1; times <= MULTIPLES; times += 1)
      sum += valueAt(again, (times * seconds) / hop);
    return sum / MULTIPLES;
  };
  const found = topsBetween(strengthOf, 60 / (FASTEST * 2), 60 / SLOWEST);
  const levels = found
    .slice(0, LEVELS)
    .flatMap(({ seconds }) => RELATED.map((ratio) => seconds * ratio));
  const within = levels
    .filter((seconds) => seconds >= 60 / FASTEST && seconds <= 60 / SLOWEST)
    .map((seconds) => refine(seconds, strengthOf))
    .sort((a, b) => b.strength - a.strength);
  const kept: number[] = [];
  for (const { seconds } of within) {
    if (kept.every((other) => Math.abs(Math.log(other / seconds)) > SAME)) kept.push(seconds);
  }
  return kept.slice(0, most);
}

interface Level {
  readonly seconds: number;
  readonly strength: number;
}

const STEP = 0.002;

function topsBetween(
  strengthOf: (seconds: number) => number,
  from: number,
  to: number,
): readonly Level[] {
  const count = Math.ceil((to - from) / STEP) + 1;
  const levels = Array.from({ length: count }, (_, at): Level => {
    const seconds = from + at * STEP;
    return { seconds, strength: strengthOf(seconds) };
  });
  return levels
    .filter(({ strength }, at) => {
      const [before, after] = [levels[at - 1], levels[at + 1]];
      return strength > (before?.strength ?? -1) && strength >= (after?.strength ?? -1);
    })
    .sort((a, b) => b.strength - a.strength);
}

/** The strongest length near one. */
function refine(near: number, strengthOf: (seconds: number) => number): Level {
  let best: Level = { seconds: near, strength: strengthOf(near) };
  for (let at = -10; at <= 10; at += 1) {
    const seconds = near * (1 + 0.002 * at);
    const strength = strengthOf(seconds);
    if (strength > best.strength) best = { seconds, strength };
  }
  return best;
}

function autocorrelation(values: Float64Array, longest: number): Float64Array {
  return new Float64Array(longest + 1).map((_, lag) => {
    let sum = 0;
    for (let at = lag; at < values.length; at += 1)
      sum += (values[at] as number) * (values[at - lag] as number);
    return sum / Math.max(1, values.length);
  });
}

function valueAt(values: Float64Array, place: number): number {
  const row = Math.floor(place);
  const here = values[row] ?? 0;
  const next = values[row + 1] ?? 0;
  return here + (place - row) * (next - here);
}
