import type { Chart } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { type Chord, itemAt, type Key, parseKey } from '@reedplate/pitch';
import type { PlayingStyle } from '../styles.js';
import { type ChordTable, type CompiledChord, compileChord, SILENCE } from './chord-table.js';

/** A chord that sounds for a time: neighbouring spans of the same chord made one, within a chorus. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly chorus: number;
  readonly bar: number;
  readonly beat: number;
  readonly numeral: string | null;
  readonly table: ChordTable;
}

/** A chart made ready for scoring. */
export interface ScoringGrid {
  readonly key: Key;
  /** One for each chord, in the order in which they come. */
  readonly tables: readonly CompiledChord[];
  /** The first is the silence before the first chord, so that every time is in one of them. */
  readonly changes: readonly Change[];
  readonly pickup: number;
  readonly end: number;
  readonly barTicks: number;
  readonly beatTicks: number;
}

/** Compiles a chart, each chord once. */
export function compileChart(chart: Chart, style: PlayingStyle): ScoringGrid {
  const key = parseKey(chart.key);
  const { barTicks, beatTicks } = parseMetre(chart.metre);
  const tables = new Map<string, CompiledChord>();
  const tableOf = (chord: Chord | null): ChordTable => {
    if (chord === null) return SILENCE;
    const table = tables.get(chord.symbol) ?? compileChord(chord, key, style);
    tables.set(chord.symbol, table);
    return table;
  };
  const changes = joinSpans(chart.spans, tableOf);
  const end = itemAt(chart.spans, -1).end;
  const { pickup } = chart;
  return { key, tables: [...tables.values()], changes, pickup, end, barTicks, beatTicks };
}

const BEFORE_ALL: Change = {
  start: -Infinity,
  end: -Infinity,
  chorus: 0,
  bar: 0,
  beat: 1,
  numeral: null,
  table: SILENCE,
};

function joinSpans(
  spans: Chart['spans'],
  tableOf: (chord: Chord | null) => ChordTable,
): readonly Change[] {
  const changes = [BEFORE_ALL];
  for (const { start, end, chorus, bar, beat, numeral, chord } of spans) {
    const table = tableOf(chord);
    const last = changes[changes.length - 1] as Change;
    if (last.table === table && last.end === start && last.chorus === chorus) {
      changes[changes.length - 1] = { ...last, end };
    } else {
      changes.push({ start, end, chorus, bar, beat, numeral, table });
    }
  }
  return changes;
}
