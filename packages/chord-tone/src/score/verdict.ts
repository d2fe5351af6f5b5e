import type { Fault, FaultCode } from './faults.js';
import type { OtherHarp } from './other-harp.js';
import type { ChangeScore } from './score-types.js';

/** What a teacher would say first: a fault of the whole take, silence, or how far the take follows. */
export type VerdictCode =
  | FaultCode
  | 'BARS_NOT_PLAYED'
  | 'TOO_LITTLE_TO_JUDGE'
  | 'FOLLOWS_EVERY_CHANGE'
  | 'FOLLOWS_WELL'
  | 'FOLLOWS_IN_PART'
  | 'HARDLY_FOLLOWS';

/** The verdict on a take. */
export interface Verdict {
  readonly code: VerdictCode;
  /** As `Fault.by`; bars for `BARS_NOT_PLAYED`; 0 for the others. */
  readonly by: number;
  /** The harps of `TAKE_OTHER_HARP`; null for the others. */
  readonly otherHarp: OtherHarp | null;
}

/** What a verdict is made of. */
export interface VerdictParts {
  readonly total: number;
  readonly fault: Fault | null;
  readonly otherHarp: OtherHarp | null;
  /** Bars that are silent, and their share. */
  readonly silentBars: readonly number[];
  readonly silent: number;
  /** How many notes were judged by a chord. */
  readonly struck: number;
  readonly changes: readonly Pick<ChangeScore, 'shown' | 'landing'>[];
}

/** Fewer notes are too few for a verdict on following. Design choice. */
const LEAST_NOTES = 6;

/** Share of silent bars that is the first thing to say: a quarter. Design choice. */
const MUCH_SILENCE = 0.25;

/**
 * Totals from which a take is said to follow so far; what they mean is measured in the docs. The first is
 * said only where no change went by unheard; where each was met on a tone that fits, no less than the last.
 */
const LEVELS = [
  { from: 90, code: 'FOLLOWS_EVERY_CHANGE' },
  { from: 60, code: 'FOLLOWS_WELL' },
  { from: 30, code: 'FOLLOWS_IN_PART' },
] as const;

/** What to say first of a take. */
export function verdictOn(parts: VerdictParts): Verdict {
  const { total, fault, otherHarp, silentBars, silent, struck } = parts;
  if (fault !== null) return verdict(fault.code, fault.by, otherHarp);
  if (silent >= MUCH_SILENCE) return verdict('BARS_NOT_PLAYED', silentBars.length);
  if (struck < LEAST_NOTES) return verdict('TOO_LITTLE_TO_JUDGE', 0);
  return verdict(levelOf(total, parts.changes), 0);
}

/** What a total says, as far as the changes that were played bear it out. */
function levelOf(total: number, changes: VerdictParts['changes']): VerdictCode {
  const levels = changes.every(({ shown }) => shown !== false) ? LEVELS : LEVELS.slice(1);
  const level = levels.find(({ from }) => total >= from)?.code;
  if (level !== undefined) return level;
  const isMet = changes.every(({ shown, landing }) => shown !== false && (landing ?? 0) > 0);
  return isMet ? 'FOLLOWS_IN_PART' : 'HARDLY_FOLLOWS';
}

function verdict(code: VerdictCode, by: number, otherHarp: OtherHarp | null = null): Verdict {
  return Object.freeze({ code, by, otherHarp });
}
