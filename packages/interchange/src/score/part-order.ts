import type { Measure } from './measure.js';
import { playOrder } from './play-order.js';

/** Most parts of a tune played one after another. */
const MOST_PARTS = 200;

/**
 * The measures in the order of labelled parts, each with its repeats; `undefined` where the labels do
 * not say which measures are meant.
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
  return labels.flatMap((label) => {
    const { at = 0, end } = known.get(label) ?? {};
    return playOrder(measures.slice(at, end)).map((index) => index + at);
  });
}
