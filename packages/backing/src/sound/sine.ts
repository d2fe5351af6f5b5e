/** Points of a turn. A power of two, so that a phase wraps by a mask. */
const POINTS = 4096;

let table: Float64Array | undefined;

/**
 * The sine of a part of a turn, from 0 to 1, to five places: sums and products alone, so that a sound is the
 * same on every runtime, where `Math.sin` may differ in its last bit.
 */
export function sineOfTurn(turn: number): number {
  table ??= makeTable();
  const place = turn * POINTS;
  const below = Math.floor(place);
  const from = table[below & (POINTS - 1)] as number;
  const to = table[(below + 1) & (POINTS - 1)] as number;
  return from + (to - from) * (place - below);
}

function makeTable(): Float64Array {
  return Float64Array.from({ length: POINTS }, (_, at) => seriesOf(at / POINTS));
}

/** Terms of the series until they are too small to count, within a quarter of a turn. */
const TERMS = 9;

function seriesOf(turn: number): number {
  if (turn > 0.5) return -seriesOf(turn - 0.5);
  const x = 2 * Math.PI * (turn > 0.25 ? 0.5 - turn : turn);
  let term = x;
  let sum = x;
  for (let at = 1; at < TERMS; at += 1) {
    term *= (-x * x) / (2 * at * (2 * at + 1));
    sum += term;
  }
  return sum;
}
