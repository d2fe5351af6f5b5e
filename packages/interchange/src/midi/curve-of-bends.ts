import type { NoteExpression, PitchPoint } from '@reedplate/line';
import type { Bend } from './bends.js';
import { thinCurve } from './thin-curve.js';

/** A piece of a note in our ticks, and what it is bent by. */
export interface BentStretch {
  readonly bends: readonly Bend[];
  /** Semitones from the pitch that is read to the one that was struck. */
  readonly semitones: number;
  readonly start: number;
  readonly duration: number;
  /** Ticks of ours in one of the file's. */
  readonly scale: number;
}

/** Furthest that a curve goes, in cents. */
const LARGEST_CURVE = 2400;
/** Furthest that a note as a whole lies from its pitch, in cents. */
const LARGEST_CENTS = 100;

/** Whether a bend goes further than a curve can. */
export function isTooFar({ bends, semitones }: BentStretch): boolean {
  return bends.some((bend) => Math.abs(bend.semitones + semitones) * 100 > LARGEST_CURVE);
}

/**
 * What bends make of a note: cents where they stay the same, else a curve. Bends that come close upon
 * each other are a glide; one that is held for longer is held until the next.
 */
export function curveOfBends(stretch: BentStretch): Pick<NoteExpression, 'cents' | 'curve'> {
  const steps = stepsOf(stretch);
  const [first] = steps;
  const cents = first?.cents ?? 0;
  if (steps.some((step) => step.cents !== cents)) return { curve: thinCurve(withHolds(steps)) };
  if (cents === 0) return {};
  return Math.abs(cents) <= LARGEST_CENTS ? { cents } : { curve: [{ at: 0, cents }] };
}

/** Each bend as a point; of those on one tick the last. */
function stepsOf({ bends, semitones, start, duration, scale }: BentStretch): readonly PitchPoint[] {
  const points = bends.map((bend): PitchPoint => {
    const at = Math.round(bend.tick * scale) - start;
    return {
      at: Math.min(duration, Math.max(0, at)),
      cents: tenths(100 * (bend.semitones + semitones)),
    };
  });
  return points.filter(({ at }, index) => at !== points[index + 1]?.at);
}

/** A wheel counts no finer. */
function tenths(cents: number): number {
  const bounded = Math.min(LARGEST_CURVE, Math.max(-LARGEST_CURVE, cents));
  return Math.round(bounded * 10) / 10 + 0;
}

/** Bends further apart than this (a sixteenth of a quarter note) are steps, not a glide. */
const LONGEST_GLIDE = 60;

function withHolds(steps: readonly PitchPoint[]): readonly PitchPoint[] {
  return steps.flatMap((step, index) => {
    const next = steps[index + 1];
    const isHeld = next !== undefined && next.at - step.at > LONGEST_GLIDE;
    return isHeld ? [step, { at: next.at - 1, cents: step.cents }] : [step];
  });
}
