import { bestReading, type Reading } from './readings.js';

/** Faults of a whole take; see {@link Fault}. */
export const FAULT_CODES = Object.freeze([
  'TAKE_OTHER_HARP',
  'TAKE_BARS_LATE',
  'TAKE_BARS_EARLY',
  'TAKE_BEATS_LATE',
  'TAKE_BEATS_EARLY',
  'STAYS_ON_ONE_CHORD',
  'CHORD_MISSED',
] as const);

/** What is wrong with a whole take. */
export type FaultCode = (typeof FAULT_CODES)[number];

/** A fault of the whole take, which another reading of it shows. */
export interface Fault {
  readonly code: FaultCode;
  /**
   * `TAKE_OTHER_HARP`: semitones that the take lies above the key, −5 to 6; late or early: how many
   * beats or bars, above 0; `CHORD_MISSED`: semitones from the tonic up to the root of the chord;
   * `STAYS_ON_ONE_CHORD`: 0.
   */
  readonly by: number;
  /** What part of what was lost it explains, 0.55 to 1. */
  readonly explains: number;
}

/** What a reading must explain of what was lost to be called the fault. Design choice. */
const ENOUGH = 0.55;

/** How much more it must explain than any reading that says something else. Design choice. */
const LEAD = 0.1;

/** Least chord fit that must be lost to it: a take without faults has one reading that is best by a hair. */
const LEAST = 0.01;

/** Least that must be played, in felt beats of weight: three bars. Of a few notes nothing stands out. */
const ENOUGH_PLAYED = 12;

/** The fault of a whole take, where one reading explains half of what was lost and leads clearly. */
export function faultOf(
  readings: readonly Reading[],
  chordFit: number,
  played: number,
): Fault | null {
  if (played < ENOUGH_PLAYED) return null;
  const best = bestReading(readings);
  if (best === undefined || best.explains < ENOUGH || best.chordFit - chordFit < LEAST) return null;
  if (best.kind !== 'one-chord' && !isAhead(best, readings)) return null;
  const by = best.kind === 'other-harp' ? best.by : Math.abs(best.by);
  return Object.freeze({ code: codeOf(best), by, explains: best.explains });
}

/** Of staying on one chord this is not asked: every chart with more of that chord then fits better too. */
function isAhead(best: Reading, readings: readonly Reading[]): boolean {
  return readings.every((other) => other === best || other.explains <= best.explains - LEAD);
}

function codeOf({ kind, by }: Reading): FaultCode {
  switch (kind) {
    case 'other-harp':
      return 'TAKE_OTHER_HARP';
    case 'bars-off':
      return by > 0 ? 'TAKE_BARS_LATE' : 'TAKE_BARS_EARLY';
    case 'beats-off':
      return by > 0 ? 'TAKE_BEATS_LATE' : 'TAKE_BEATS_EARLY';
    case 'one-chord':
      return 'STAYS_ON_ONE_CHORD';
    case 'chord-missed':
      return 'CHORD_MISSED';
  }
}
