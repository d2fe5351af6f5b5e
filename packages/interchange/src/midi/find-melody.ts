import type { TimedNote } from '@reedplate/line';
import type { PiecePart } from '../piece.js';

/** General MIDI program of the harmonica, counted from 1. */
export const HARMONICA_PROGRAM = 23;

const MELODY_NAME = /melod|harmonica|vocal|voice|lead|solo|tune|singer/iu;

/** A part with fewer of the piece's notes than this is an effect, not the tune. */
const LEAST_SHARE = 0.1;
const WEIGHT_OF_NAME = 1;
const WEIGHT_OF_HEIGHT = 0.5;

/**
 * The part that looks most like a melody: a harmonica or what is named a melody first, else what
 * sounds one note at a time and lies high. The weights are our own; the first part on a tie.
 */
export function findMelody(parts: readonly PiecePart[]): PiecePart | undefined {
  const most = Math.max(0, ...parts.map(({ line }) => line.notes.length));
  const pitched = parts.filter(
    ({ line, percussion }) => percussion !== true && line.notes.length >= most * LEAST_SHARE,
  );
  const weighed = pitched.map((part) => ({ part, weight: melodyWeight(part) }));
  const best = Math.max(...weighed.map(({ weight }) => weight));
  return weighed.find(({ weight }) => weight === best)?.part;
}

function melodyWeight({ name, program, line }: PiecePart): number {
  const isNamed = program === HARMONICA_PROGRAM || MELODY_NAME.test(name);
  const height = line.notes.reduce((sum, { pitch }) => sum + pitch, 0) / line.notes.length / 127;
  return (isNamed ? WEIGHT_OF_NAME : 0) + shareAlone(line.notes) + WEIGHT_OF_HEIGHT * height;
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
