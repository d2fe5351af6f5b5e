import { toPitchClass } from '@reedplate/pitch';
import type { FitsOn } from './chance.js';
import type { ChordTable } from './chord-table.js';
import type { ScoringGrid } from './grid.js';
import { homeOf, mapChords, transposeGrid, turnGrid } from './other-charts.js';
import type { ScoreWeights } from './weights.js';

/**
 * Another way to understand a take, each the trace of a fault of the whole take: played on another
 * harp; a beat or bars late or early; over the tonic chord throughout; as if one chord of the key were
 * the tonic's.
 */
export type ReadingKind = 'other-harp' | 'beats-off' | 'bars-off' | 'one-chord' | 'chord-missed';

/** What a take would fit if it were read so. */
export interface Reading {
  readonly kind: ReadingKind;
  /**
   * `other-harp`: semitones that the take lies above the key, −5 to 6; `beats-off` and `bars-off`:
   * beats or bars that it comes late (negative: early); `chord-missed`: semitones from the tonic up
   * to the root of the chord; `one-chord`: 0.
   */
  readonly by: number;
  /** The chord fit it would have, 0 to 1. */
  readonly chordFit: number;
  /** What part of what was lost it explains: 1 all, 0 none or less. */
  readonly explains: number;
}

interface OtherChart {
  readonly kind: ReadingKind;
  readonly by: number;
  readonly grid: ScoringGrid;
}

const INTERVALS = [-5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6] as const;
const BARS = [-2, -1, 1, 2] as const;
const BEATS = [-1, 1] as const;
const FOURTH = 5;
const FIFTH = 7;

/** Every other chart that a take is read with, those together whose chords change at the same times. */
function otherCharts(grid: ScoringGrid): readonly (readonly OtherChart[])[] {
  const { barTicks, beatTicks } = grid;
  const home = homeOf(grid);
  const later = (kind: ReadingKind, by: number, ticks: number): OtherChart[] => [
    { kind, by, grid: turnGrid(grid, by * ticks) },
  ];
  return [
    INTERVALS.map((by): OtherChart => ({ kind: 'other-harp', by, grid: transposeGrid(grid, by) })),
    ...BARS.map((by) => later('bars-off', by, barTicks)),
    ...BEATS.map((by) => later('beats-off', by, beatTicks)),
    ...(home === undefined ? [] : staticCharts(grid, home).map((one) => [one])),
  ];
}

function staticCharts(grid: ScoringGrid, home: ChordTable): readonly OtherChart[] {
  const above = ({ root }: ChordTable): number => toPitchClass(root - grid.key.pitchClass);
  const missed = [FOURTH, FIFTH].filter((by) => grid.tables.some((table) => above(table) === by));
  return [
    { kind: 'one-chord', by: 0, grid: mapChords(grid, () => home) },
    ...missed.map(
      (by): OtherChart => ({
        kind: 'chord-missed',
        by,
        grid: mapChords(grid, (table) => (above(table) === by ? home : table)),
      }),
    ),
  ];
}

/** How a take fits when it is read otherwise, in a fixed order. */
export function readOtherwise(
  grid: ScoringGrid,
  chordFit: number,
  fitsOn: FitsOn,
): readonly Reading[] {
  return otherCharts(grid).flatMap((charts) => {
    const fits = fitsOn(charts.map((chart) => chart.grid));
    return charts.map(({ kind, by }, at) => {
      const otherFit = fits[at] ?? 0;
      const explains = chordFit >= 1 ? 0 : Math.max(0, (otherFit - chordFit) / (1 - chordFit));
      return Object.freeze({ kind, by, chordFit: otherFit, explains });
    });
  });
}

/** The reading that explains most of what was lost; undefined where none explains anything. */
export function bestReading(readings: readonly Reading[]): Reading | undefined {
  let best: Reading | undefined;
  for (const reading of readings) {
    if (reading.explains > (best?.explains ?? 0)) best = reading;
  }
  if (best === undefined) return undefined;
  const still = readings.find(({ kind }) => kind === 'one-chord');
  // Who stays on the tonic also seems to miss V, or to play in another key: staying says it all.
  const isNear = still !== undefined && still.explains > best.explains - NEARLY;
  return isNear && still.explains > 0 ? still : best;
}

/** By how much less a reading may explain and still be taken for as good. Design choice. */
const NEARLY = 0.05;

/** The share of chord fit and following that the best other reading takes off. */
export function chargeOf(
  readings: readonly Reading[],
  { faults, faultsFrom }: Pick<ScoreWeights, 'faults' | 'faultsFrom'>,
): number {
  const best = bestReading(readings);
  if (best === undefined || faultsFrom >= 1) return 0;
  return faults[best.kind] * Math.max(0, (best.explains - faultsFrom) / (1 - faultsFrom));
}
