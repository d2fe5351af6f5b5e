import { requireInteger, requireShape } from '@reedplate/pitch';
import { lastStartedAt } from './chord-at.js';
import { requireChart } from './require-chart.js';
import type { Chart, ChordSpan } from './types.js';

/**
 * The changes of a chart: its chord spans with neighbours of the same chord made one, so that
 * each begins where the chord differs from the one before, the first at bar 1. `bar`, `beat`,
 * `chorus` and `numeral` are those of the beginning.
 *
 * @throws ReedplateError `CHART_INVALID` for what is no chart
 * @example
 * ```ts
 * import { chordChanges, makeChart } from '@reedplate/form';
 *
 * const changes = chordChanges(makeChart('basic', 'G'));
 * changes.map(({ bar, numeral }) => `${bar} ${numeral}`); // => ['1 I7', '5 IV7', '7 I7', '9 V7', '10 IV7', '11 I7', '12 V7']
 * ```
 */
export function chordChanges(chart: Chart): readonly ChordSpan[] {
  const { spans } = requireChart(chart);
  const changes: ChordSpan[] = [];
  for (const span of spans) {
    const last = changes.at(-1);
    if (last !== undefined && last.chord?.symbol === span.chord?.symbol) {
      changes[changes.length - 1] = { ...last, end: span.end };
    } else {
      changes.push(span);
    }
  }
  return Object.freeze(changes.map((change) => Object.freeze(change)));
}

/**
 * The first change that begins after a tick, in logarithmic time; `undefined` after the last.
 *
 * @param changes as {@link chordChanges} gives them
 * @param tick whole number from 0
 * @throws ReedplateError `NUMBER_RANGE`, or `CHART_INVALID` for what is no list of changes
 * @example
 * ```ts
 * import { chordChanges, makeChart, nextChange } from '@reedplate/form';
 *
 * const changes = chordChanges(makeChart('basic', 'G'));
 * nextChange(changes, 3840)?.chord?.symbol; // => 'C7'
 * nextChange(changes, -1); // throws NUMBER_RANGE
 * ```
 */
export function nextChange(changes: readonly ChordSpan[], tick: number): ChordSpan | undefined {
  requireInteger(tick, { min: 0, what: 'a tick' });
  return changeIn(changes, lastStartedAt(requireChanges(changes), tick) + 1);
}

/**
 * The last change that began at or before a tick, in logarithmic time: the chord that sounds,
 * from where it was reached; `undefined` in the pickup.
 *
 * @param changes as {@link chordChanges} gives them
 * @param tick whole number from 0
 * @throws ReedplateError `NUMBER_RANGE`, or `CHART_INVALID` for what is no list of changes
 * @example
 * ```ts
 * import { chordChanges, makeChart, previousChange } from '@reedplate/form';
 *
 * const changes = chordChanges(makeChart('basic', 'G'));
 * previousChange(changes, 3840)?.bar; // => 1
 * previousChange(changes, -1); // throws NUMBER_RANGE
 * ```
 */
export function previousChange(changes: readonly ChordSpan[], tick: number): ChordSpan | undefined {
  requireInteger(tick, { min: 0, what: 'a tick' });
  return changeIn(changes, lastStartedAt(requireChanges(changes), tick));
}

const CHANGES = {
  what: 'a list of changes, as chordChanges gives it',
  code: 'CHART_INVALID',
} as const;

/** A change by its place in a list; only the one that is asked for is looked at. */
function changeIn(changes: readonly ChordSpan[], at: number): ChordSpan | undefined {
  const change = changes[at];
  return change === undefined
    ? undefined
    : requireShape(
        change,
        { start: 'number', end: 'number' },
        { ...CHANGES, path: `changes[${at}]` },
      );
}

function requireChanges(changes: readonly ChordSpan[]): readonly ChordSpan[] {
  requireShape({ changes }, { changes: 'list' }, CHANGES);
  return changes;
}
