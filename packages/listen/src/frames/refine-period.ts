import { itemAt } from '@reedplate/pitch';

/** Periods more than this say little more, and vibrato blurs them. */
const MOST_PERIODS = 12;

/**
 * A period in samples, made finer: the lag of several periods at which the window is most like itself,
 * divided by their number. An error of a tenth of a sample is a twelfth of that after twelve periods, which
 * matters for the highest holes, where a period has some twenty samples.
 */
export function refinePeriod(window: Float32Array, period: number): number {
  let fine = period;
  const most = Math.min(MOST_PERIODS, Math.floor(window.length / 2 / period));
  for (const periods of [2, 4, 8, MOST_PERIODS]) {
    if (periods > most) break;
    const lag = bestLag(window, fine * periods);
    if (lag === undefined) break;
    fine = lag / periods;
  }
  return fine;
}

/** The lag nearest to one that is expected at which the likeness is greatest; none where it has no top there. */
function bestLag(window: Float32Array, expected: number): number | undefined {
  let lag = Math.round(expected);
  const likeness = (at: number): number => likenessAt(window, at);
  // Two steps to either side: more would reach another period of the highest notes.
  for (let step = 0; step < 2; step += 1) {
    if (likeness(lag + 1) > likeness(lag)) lag += 1;
    else if (likeness(lag - 1) > likeness(lag)) lag -= 1;
  }
  const [left, top, right] = [likeness(lag - 1), likeness(lag), likeness(lag + 1)];
  const bend = left - 2 * top + right;
  if (!(bend < 0 && top >= left && top >= right)) return undefined;
  return lag + (left - right) / (2 * bend);
}

/** Likeness of a window to itself, moved by a lag: 1 where the same, as McLeod and Wyvill norm it. */
function likenessAt(window: Float32Array, lag: number): number {
  let product = 0;
  let energy = 0;
  for (let at = 0; at + lag < window.length; at += 1) {
    const here = itemAt(window, at);
    const there = itemAt(window, at + lag);
    product += here * there;
    energy += here * here + there * there;
  }
  return energy === 0 ? 0 : (2 * product) / energy;
}
