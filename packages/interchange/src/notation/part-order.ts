import { ReedplateError } from '@reedplate/pitch';
import type { Measure } from './measure.js';
import { playOrder } from './play-order.js';

/** Most parts of a tune played one after another. */
const MOST_PARTS = 200;

/**
 * The measures in the order of labelled parts, each with its repeats; `undefined` where the labels do
 * not say which measures are meant.
 *
 * @throws ReedplateError `FILE_TOO_LARGE`
 */
export function partOrder(
  measures: readonly Measure[],
  labels: readonly string[],
): readonly number[] | undefined {
  const starts = measures.flatMap(({ label }, at) => (label === undefined ? [] : [{ label, at }]));
  const known = new Map(
    starts.map(({ label, at }, index) => [label, { at, end: starts[index + 1]?.at }]),
  );
  const isClear = starts[0]?.at === 0 && known.size === starts.length;
  if (!isClear || labels.length > MOST_PARTS || !labels.every((label) => known.has(label))) {
    return undefined;
  }
  const orders = new Map(
    [...known].map(([label, { at, end }]) => {
      return [label, playOrder(measures.slice(at, end)).map((index) => index + at)];
    }),
  );
  requirePlayed(labels.reduce((sum, label) => sum + (orders.get(label)?.length ?? 0), 0));
  return labels.flatMap((label) => orders.get(label) ?? []);
}

/** Most measures played: a small file could ask for hundreds of times its own. */
const MOST_PLAYED = 200_000;

function requirePlayed(count: number): void {
  if (count <= MOST_PLAYED) return;
  const expected = `at most ${MOST_PLAYED} bars with its repeats`;
  throw new ReedplateError({ code: 'FILE_TOO_LARGE', value: 'this piece', expected });
}
