import type { TimedNote } from '@reedplate/line';
import type { FoundPart, PartReason } from '../part-choice.js';
import type { PiecePart } from '../piece.js';
import {
  BACKING_NAME,
  BACKING_PROGRAMS,
  HARMONICA_PROGRAM,
  LEAST_SHARE,
  MELODY_NAME,
  MELODY_PROGRAMS,
  MELODY_RANGE,
  WEIGHTS,
} from './melody-clues.js';

/**
 * The part that looks most like a melody, by name, instrument, how much of it is single notes, and
 * where it lies; percussion never. The first part on a tie, with the others named.
 */
export function findMelody(parts: readonly PiecePart[]): FoundPart | undefined {
  const pitched = parts.flatMap((part, at) =>
    part.percussion === true ? [] : [{ part, number: at + 1 }],
  );
  const most = Math.max(0, ...pitched.map(({ part }) => part.line.notes.length));
  const weighed = pitched.map(({ part, number }) => ({ number, ...weigh(part, most) }));
  const best = weighed.reduce<Weighed | undefined>(
    (first, next) => (first === undefined || next.points > first.points ? next : first),
    undefined,
  );
  if (best === undefined) return undefined;
  const ties = weighed.filter(({ points, number }) => {
    return points === best.points && number !== best.number;
  });
  return {
    part: best.number,
    reasons: parts.length === 1 ? ['only'] : best.reasons,
    ties: ties.map(({ number }) => number),
    doubtful: best.isBacking,
  };
}

interface Weighed {
  readonly number: number;
  readonly points: number;
  readonly reasons: readonly PartReason[];
  readonly isBacking: boolean;
}

function weigh(part: PiecePart, most: number): Omit<Weighed, 'number'> {
  const { notes } = part.line;
  const byName = pointsOfName(part.name);
  const byProgram = pointsOfProgram(part.program);
  const alone = shareAlone(notes);
  const within = shareWithin(notes);
  const isFew = notes.length < most * LEAST_SHARE;
  const height = notes.reduce((sum, { pitch }) => sum + pitch, 0) / notes.length;
  const points = [
    byName,
    byProgram,
    Math.round(WEIGHTS.singleNotes * alone),
    Math.round(WEIGHTS.range * within),
    Math.round(WEIGHTS.semitone * height),
    isFew ? WEIGHTS.few : 0,
  ];
  const clues: readonly (readonly [PartReason, boolean])[] = [
    ['name', byName > 0],
    ['program', byProgram > 0],
    ['single-notes', alone > MOSTLY],
    ['range', within > MOSTLY],
  ];
  return {
    points: points.reduce((sum, point) => sum + point, 0),
    reasons: clues.flatMap(([reason, holds]) => (holds ? [reason] : [])),
    isBacking: byName + byProgram < 0,
  };
}

/** Share of its notes from which on a part is said to be so. */
const MOSTLY = 0.8;

function pointsOfName(name: string): number {
  if (MELODY_NAME.test(name)) return WEIGHTS.melodyName;
  return BACKING_NAME.test(name) ? WEIGHTS.backingName : 0;
}

function pointsOfProgram(program: number | undefined): number {
  if (program === undefined) return 0;
  if (program === HARMONICA_PROGRAM) return WEIGHTS.harmonica;
  const isIn = ([first, last]: readonly [number, number]): boolean =>
    program >= first && program <= last;
  if (MELODY_PROGRAMS.some(isIn)) return WEIGHTS.melodyProgram;
  return BACKING_PROGRAMS.some(isIn) ? WEIGHTS.backingProgram : 0;
}

function shareWithin(notes: readonly TimedNote[]): number {
  const { low, high } = MELODY_RANGE;
  return notes.filter(({ pitch }) => pitch >= low && pitch <= high).length / notes.length;
}

/** Share of notes that begin when no other sounds. */
function shareAlone(notes: readonly TimedNote[]): number {
  let alone = 0;
  let soundsUntil = -1;
  let lastStart = -1;
  for (const { start, duration } of notes) {
    if (start >= soundsUntil && start !== lastStart) alone += 1;
    soundsUntil = Math.max(soundsUntil, start + duration);
    lastStart = start;
  }
  return alone / notes.length;
}
