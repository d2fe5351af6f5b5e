import type { Chart, ChordSpan } from './types.js';

/**
 * The changes of a chart: its chord spans with neighbours of the same chord made one, so that
 * each begins where the chord differs from the one before, the first at bar 1. `bar`, `beat`,
 * `chorus` and `numeral` are those of the beginning.
 *
 * @example
 * ```ts
 * import { chordChanges, formById, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart(formById('basic'), { key: 'G' });
 * chordChanges(chart).map(({ bar, numeral }) => `${bar} ${numeral}`);
 * // => ['1 I7', '5 IV7', '7 I7', '9 V7', '10 IV7', '11 I7', '12 V7']
 * ```
 */
export function chordChanges({ spans }: Chart): readonly ChordSpan[] {
  const changes: ChordSpan[] = [];
  for (const span of spans) {
    const last = changes.at(-1);
    if (last !== undefined && sounds(last) === sounds(span)) {
      changes[changes.length - 1] = { ...last, end: span.end };
    } else {
      changes.push(span);
    }
  }
  return Object.freeze(changes.map((change) => Object.freeze(change)));
}

function sounds({ chord }: ChordSpan): string | undefined {
  return chord?.symbol;
}
