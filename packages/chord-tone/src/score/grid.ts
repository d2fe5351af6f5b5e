import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { type Key, parseKey, ReedplateError } from '@reedplate/pitch';
import type { Style } from '../styles.js';
import { type ChordTable, compileChord } from './chord-table.js';

/** A chord that sounds for a time: neighbouring spans of the same chord made one, within a chorus. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly chorus: number;
  readonly bar: number;
  readonly beat: number;
  readonly numeral: string | null;
  /** Index into the tables; −1 where no chord sounds. */
  readonly table: number;
}

/** A chart made ready for scoring. */
export interface ScoringGrid {
  readonly key: Key;
  readonly tables: readonly ChordTable[];
  readonly changes: readonly Change[];
  readonly pickup: number;
  readonly end: number;
  readonly barTicks: number;
  readonly beatTicks: number;
}

/** Compiles a chart, each chord once. */
export function compileChart(chart: Chart, style: Style): ScoringGrid {
  const key = parseKey(chart.key);
  const { barTicks, beatTicks } = parseMetre(chart.metre);
  const tables: ChordTable[] = [];
  const known = new Map<string, number>();
  const changes: Change[] = [];
  for (const { start, end, chorus, bar, beat, numeral, chord } of requireSpans(chart)) {
    let table = chord === null ? -1 : known.get(chord.symbol);
    if (table === undefined && chord !== null) {
      table = tables.push(compileChord(chord, key, style)) - 1;
      known.set(chord.symbol, table);
    }
    const last = changes.at(-1);
    if (last?.table === table && last?.end === start && last.chorus === chorus) {
      changes[changes.length - 1] = { ...last, end };
    } else {
      changes.push({ start, end, chorus, bar, beat, numeral, table: table ?? -1 });
    }
  }
  const end = changes.at(-1)?.end ?? 0;
  return { key, tables, changes, pickup: chart.pickup, end, barTicks, beatTicks };
}

function requireSpans({ spans, form }: Chart): Chart['spans'] {
  if (!spans.some(({ chord }) => chord !== null)) throw invalid(form, 'a chart with a chord', 0);
  spans.forEach((span, index) => {
    const before = spans[index - 1]?.end ?? 0;
    if (!(span.start >= before && span.end > span.start)) {
      throw invalid(span.start, 'spans in order, each of some length', index);
    }
  });
  return spans;
}

function invalid(value: unknown, expected: string, index: number): ReedplateError {
  const where = { path: `spans[${index}]`, index };
  return new ReedplateError({ code: 'CHART_INVALID', value, expected, where });
}
