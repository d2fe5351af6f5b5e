import type { StudyComparison } from '@reedplate/study';
import type { Page } from '../../shared/print.js';
import type { SummaryRow } from './rows.js';

const HEAD = ['compared', 'where', 'tunes', 'difference', 'effect size', 'p', 'p (Holm)'];

const ASIDE =
  'second less first over the tunes that both play whole; in brackets 95 % intervals by drawing families of tunes again; p by random signs, then corrected after Holm for all rows';

/** Comparisons for people. */
export function showComparisons(
  comparisons: readonly StudyComparison[],
  { paint, table }: Page,
): readonly string[] {
  const figure = comparisons[0]?.figure ?? '';
  return [
    '',
    paint('heading', `differences over the same tunes (${figure})`),
    '',
    ...table({ head: HEAD, rows: comparisons.map(rowOf) }),
    '',
    paint('aside', ASIDE),
  ];
}

function rowOf({ first, second, where, tunes, difference }: StudyComparison): readonly string[] {
  const named = [`${second} - ${first}`, where, `${tunes}`];
  if (difference === null) return [...named, 'too few tunes', '-', '-', '-'];
  const { value, low, high, effectSize, probability, corrected } = difference;
  return [
    ...named,
    `${signed(value)} (${signed(low)} to ${signed(high)})`,
    effectSize === null ? '-' : signed(effectSize),
    chance(probability),
    chance(corrected),
  ];
}

const signed = (value: number): string => `${value > 0 ? '+' : ''}${value.toFixed(2)}`;

const chance = (value: number): string => value.toFixed(3);

/** Comparisons as flat records, for CSV; null where there are too few tunes. */
export function comparisonRows(comparisons: readonly StudyComparison[]): readonly SummaryRow[] {
  return comparisons.map(({ difference, ...named }) => ({
    ...named,
    difference: difference?.value ?? null,
    low: difference?.low ?? null,
    high: difference?.high ?? null,
    effectSize: difference?.effectSize ?? null,
    probability: difference?.probability ?? null,
    corrected: difference?.corrected ?? null,
  }));
}
