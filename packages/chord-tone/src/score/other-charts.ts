import { toPitchClass } from '@reedplate/pitch';
import { timeOfChords } from './chance.js';
import { type ChordTable, type CompiledChord, SILENCE } from './chord-table.js';
import type { Change, ScoringGrid } from './grid.js';

/** The chart with every chord moved up by semitones: what a line fits that is played on another harp. */
export function transposeGrid(grid: ScoringGrid, semitones: number): ScoringGrid {
  return mapChords(grid, (table) => transposeTable(table, semitones));
}

function transposeTable(table: ChordTable, semitones: number): ChordTable {
  if (table.chord === null) return table;
  const turned = <Item>(items: readonly Item[]): readonly Item[] =>
    items.map((_, pitchClass) => items[toPitchClass(pitchClass - semitones)] as Item);
  return {
    chord: table.chord,
    root: toPitchClass(table.root + semitones),
    resting: turned(table.resting),
    tone: turned(table.tone),
    blue: turned(table.blue),
  };
}

/** The chart with other chords in the same places; neighbours that become one chord are one change. */
export function mapChords(
  grid: ScoringGrid,
  chordOf: (table: CompiledChord) => ChordTable,
): ScoringGrid {
  const known = new Map<ChordTable, ChordTable>([[SILENCE, SILENCE]]);
  const changes: Change[] = [];
  for (const change of grid.changes) {
    const table = known.get(change.table) ?? chordOf(change.table as CompiledChord);
    known.set(change.table, table);
    const last = changes.at(-1);
    if (last?.table === table && last.end === change.start) {
      changes[changes.length - 1] = { ...last, end: change.end };
    } else changes.push({ ...change, table });
  }
  return { ...grid, changes };
}

/** The chart later by ticks (earlier: negative), its end going round to its beginning. */
export function turnGrid(grid: ScoringGrid, ticks: number): ScoringGrid {
  const { pickup, end } = grid;
  const length = end - pickup;
  const [before, ...rest] = grid.changes as readonly [Change, ...Change[]];
  const turned = rest.flatMap((change) => {
    if (change.end <= pickup) return [];
    const from = Math.max(change.start, pickup) - pickup + ticks;
    const start = pickup + (((from % length) + length) % length);
    const stop = start + change.end - Math.max(change.start, pickup);
    if (stop <= end) return [{ ...change, start, end: stop }];
    return [
      { ...change, start, end },
      { ...change, start: pickup, end: stop - length },
    ];
  });
  turned.sort((a, b) => a.start - b.start);
  return { ...grid, changes: [before, ...turned] };
}

/** The chord on the tonic that sounds longest; undefined where the chart has none. */
export function homeOf(grid: ScoringGrid): ChordTable | undefined {
  let home: ChordTable | undefined;
  let longest = 0;
  for (const [table, time] of timeOfChords(grid)) {
    if (table.root !== grid.key.pitchClass || time <= longest) continue;
    home = table;
    longest = time;
  }
  return home;
}
