import { type ChordShape, chordAvailability, type PlayingStyle } from '@reedplate/chord-tone';
import type { Breath, Harp } from '@reedplate/layout';
import type { Chord } from '@reedplate/pitch';

/** How much of a chord lies together: all of it, its triad without what stands above, or less. */
export type Extent = 'whole' | 'triad' | 'part';

/** Each extent in words, in the order of a legend. */
export const EXTENT_WORDS: Readonly<Record<Extent, string>> = Object.freeze({
  whole: 'whole chord',
  triad: 'its triad',
  part: 'part of the chord',
});

/** Neighbouring holes that sound a chord together, whole or in part. */
export interface Bracket {
  readonly breath: Breath;
  /** Lowest and highest hole. */
  readonly from: number;
  readonly to: number;
  readonly extent: Extent;
  /** Which of the lanes between the row and the hole numbers it lies in, from 0. */
  readonly lane: number;
}

/**
 * Runs of neighbouring holes on one breath that sound a chord whole, and those that sound part of it
 * and are within no whole one. Runs that overlap are one bracket: any of its neighbours go together.
 * Where the harp has all tones together, those of the triad alone are left out.
 */
export function bracketsOf(chord: Chord, harp: Harp, style: PlayingStyle): readonly Bracket[] {
  const { whole, partial } = chordAvailability(chord, harp, { style, level: 'natural' });
  const complete = whole.filter(({ completeness }) => completeness === 'complete');
  const wholes = joinRuns(runsOf(complete.length > 0 ? complete : whole));
  const parts = joinRuns(
    runsOf(partial).filter((run) => !wholes.some((other) => contains(other, run))),
  );
  return inLanes([
    ...wholes.map((run) => ({ ...run, extent: complete.length > 0 ? 'whole' : 'triad' }) as const),
    ...parts.map((run) => ({ ...run, extent: 'part' }) as const),
  ]);
}

type Run = Pick<Bracket, 'breath' | 'from' | 'to'>;

function contains(outer: Run, inner: Run): boolean {
  return outer.breath === inner.breath && outer.from <= inner.from && outer.to >= inner.to;
}

function runsOf(shapes: readonly ChordShape[]): readonly Run[] {
  return shapes
    .filter(({ gesture }) => gesture !== 'split')
    .map(({ breath, holes }) => ({ breath, from: holes[0] ?? 0, to: holes.at(-1) ?? 0 }));
}

/** Makes one run of those that overlap. */
function joinRuns(runs: readonly Run[]): readonly Run[] {
  const joined: Run[] = [];
  for (const run of [...runs].sort((a, b) => a.from - b.from)) {
    const at = joined.findIndex((other) => meets(other, run));
    const before = joined[at];
    if (before === undefined) joined.push(run);
    else joined[at] = { ...before, to: Math.max(before.to, run.to) };
  }
  return joined;
}

/** Each bracket in the first lane of its breath where no other stands in its way. */
function inLanes(runs: readonly Omit<Bracket, 'lane'>[]): readonly Bracket[] {
  const placed: Bracket[] = [];
  for (const run of [...runs].sort((a, b) => a.from - b.from)) {
    let lane = 0;
    while (placed.some((other) => other.lane === lane && meets(other, run))) lane += 1;
    placed.push({ ...run, lane });
  }
  return placed;
}

function meets(a: Run, b: Run): boolean {
  return a.breath === b.breath && a.from <= b.to && b.from <= a.to;
}
