import { undoSwing } from './align.js';
import type { ScoringGrid } from './grid.js';
import { type Judged, lengthOf } from './judge.js';
import { CLASS } from './note-class.js';
import type { ChangeScore, ScoreMeasures } from './score-types.js';

/** What measuring needs to know. */
export interface MeasureOptions {
  readonly swing: number;
  /** Longest time from a note to the one it resolves to, in felt beats. */
  readonly resolveWithin: number;
}

/** The measures of a judged line, each as `ScoreMeasures` defines it. */
export function measureAll(
  judged: Judged,
  changes: readonly ChangeScore[],
  grid: ScoringGrid,
  { swing, resolveWithin }: MeasureOptions,
): ScoreMeasures {
  const time = shareOfTime(judged);
  return Object.freeze({
    fit: weightedFit(judged),
    landing: mean(changes.map(({ landing }) => landing)),
    ...time,
    resolution: resolutionOf(judged, resolveWithin * grid.beatTicks),
    coverage: mean(changes.map(({ shown }) => (shown === null ? null : Number(shown)))),
    timing: timingOf(judged, grid, swing),
  });
}

/** Mean credit of all pieces, by weight. */
export function weightedFit({ credit, weight, pieces }: Judged): number | null {
  let sum = 0;
  let total = 0;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    sum += (weight[piece] as number) * (credit[piece] as number);
    total += weight[piece] as number;
  }
  return total === 0 ? null : sum / total;
}

function mean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

type TimeShares = Pick<ScoreMeasures, 'chordToneShare' | 'guideToneShare' | 'clashTime'>;

/** Time counts once for itself and once more for the metrical strength of its onset. */
function shareOfTime({ pieces, ...judged }: Judged): TimeShares {
  let played = 0;
  let clashing = 0;
  const weighted = { all: 0, tones: 0, guides: 0 };
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const noteClass = judged.class[piece] as number;
    if (noteClass === CLASS.unjudged) continue;
    const length = lengthOf(pieces, piece);
    played += length;
    if (noteClass === CLASS.clash) clashing += length;
    const share = length * (1 + (pieces.metre[piece] as number));
    weighted.all += share;
    if (noteClass <= CLASS.chordTone) weighted.tones += share;
    if (noteClass === CLASS.guideTone) weighted.guides += share;
  }
  if (played === 0) return { chordToneShare: null, guideToneShare: null, clashTime: null };
  return {
    chordToneShare: weighted.tones / weighted.all,
    guideToneShare: weighted.guides / weighted.all,
    clashTime: clashing / played,
  };
}

/** A note that resolves at once counts 1, one that takes the whole window a half, one that does not 0. */
function resolutionOf({ runs, pieces, ...judged }: Judged, within: number): number | null {
  let resolved = 0;
  let total = 0;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const noteClass = judged.class[piece] as number;
    if (noteClass <= CLASS.chordTone || noteClass === CLASS.unjudged) continue;
    const weight = judged.weight[piece] as number;
    total += weight;
    const target = judged.resolvesTo[piece] as number;
    if (target < 0) continue;
    const wait = (runs.start[target] as number) - (pieces.start[piece] as number);
    resolved += weight * (1 - wait / (2 * within));
  }
  return total === 0 ? null : resolved / total;
}

/** Players aim at quarters and thirds of the beat: halves are among the quarters. */
const PARTS_AIMED_AT = [4, 3] as const;

/** The places that they make of a beat. */
const AIMED_AT = [0, 1 / 4, 1 / 3, 1 / 2, 2 / 3, 3 / 4, 1] as const;

/** Mean distance to the nearest of them of a time drawn at random: a quarter of each gap squared, summed. */
const DISTANCE_AT_RANDOM = AIMED_AT.slice(1).reduce((sum, place, index) => {
  const gap = place - (AIMED_AT[index] ?? 0);
  return sum + (gap * gap) / 4;
}, 0);

function timingOf({ runs, pieces }: Judged, grid: ScoringGrid, swing: number): number | null {
  const [quarters, thirds] = PARTS_AIMED_AT;
  let distance = 0;
  let count = 0;
  for (let run = 0; run < runs.count; run += 1) {
    if (pieces.first[run] === pieces.first[run + 1]) continue;
    const beats = undoSwing(((runs.start[run] as number) - grid.pickup) / grid.beatTicks, swing);
    distance += Math.min(distanceFrom(beats, quarters), distanceFrom(beats, thirds));
    count += 1;
  }
  return count === 0 ? null : Math.max(0, 1 - distance / count / DISTANCE_AT_RANDOM);
}

/** Distance of a time from the nearest of so many equal parts of the beat, in beats. */
function distanceFrom(beats: number, parts: number): number {
  return Math.abs(beats - Math.round(beats * parts) / parts);
}
