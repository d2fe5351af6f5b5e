import type { Following } from './following.js';
import type { ScoringGrid } from './grid.js';
import { fitOf, type Judged } from './judge.js';
import { isChordTone } from './note-class.js';
import { metreOf } from './place-notes.js';
import type { ChangeScore, ScoreMeasures } from './score-types.js';
import { LOOSE_AT_RANDOM, type TakeTiming } from './timing.js';

/** What measures are made of. */
export interface MeasureParts {
  readonly judged: readonly Judged[];
  readonly changes: readonly ChangeScore[];
  readonly following: Following | null;
  readonly timing: TakeTiming;
  readonly grid: ScoringGrid;
  /** Longest time from a note to the one it resolves to, in ticks. */
  readonly within: number;
}

/** The measures of a judged line, each as `ScoreMeasures` defines it. */
export function measureAll(parts: MeasureParts): ScoreMeasures {
  const { judged, changes, following, timing, grid, within } = parts;
  return Object.freeze({
    chordFit: fitOf(judged),
    following: following?.above ?? null,
    landing: mean(changes.map(({ landing }) => landing)),
    ...shareOfTime(judged, grid),
    resolution: resolvedShare(judged, within),
    coverage: mean(changes.map(({ shown }) => (shown === null ? null : Number(shown)))),
    timing: timing.loose === null ? null : Math.max(0, 1 - timing.loose / LOOSE_AT_RANDOM),
  });
}

function mean(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0) / known.length;
}

type TimeShares = Pick<ScoreMeasures, 'chordToneShare' | 'guideToneShare' | 'clashTime'>;

/** Time counts once for itself and once more for the metrical strength of its onset. */
function shareOfTime(judged: readonly Judged[], grid: ScoringGrid): TimeShares {
  let played = 0;
  let clashing = 0;
  const weighted = { all: 0, tones: 0, guides: 0 };
  for (const { part, class: noteClass } of judged) {
    if (noteClass === 'unjudged') continue;
    const length = part.end - part.start;
    played += length;
    if (noteClass === 'clash') clashing += length;
    const share = length * (1 + metreOf(part, grid));
    weighted.all += share;
    if (isChordTone(noteClass)) weighted.tones += share;
    if (noteClass === 'guide-tone') weighted.guides += share;
  }
  if (played === 0) return { chordToneShare: null, guideToneShare: null, clashTime: null };
  return {
    chordToneShare: weighted.tones / weighted.all,
    guideToneShare: weighted.guides / weighted.all,
    clashTime: clashing / played,
  };
}

/**
 * A note that resolves at once counts 1, one that takes the whole window a half, through a repetition
 * down to nothing; one that does not, 0.
 */
function resolvedShare(judged: readonly Judged[], within: number): number | null {
  let resolved = 0;
  let total = 0;
  for (const { part, weight, resolvesTo, class: noteClass } of judged) {
    if (isChordTone(noteClass) || noteClass === 'unjudged') continue;
    total += weight;
    if (resolvesTo === null) continue;
    resolved += weight * (1 - (resolvesTo.start - part.start) / (2 * within));
  }
  return total === 0 ? null : Math.max(0, resolved / total);
}
