import { ReedplateError } from '@reedplate/pitch';
import type { Pattern } from './groove.js';

/** A stroke of a pattern. */
export interface Stroke {
  /** Part of the beat, from 0. */
  readonly part: number;
  /** Velocity in MIDI, 1 to 127. */
  readonly velocity: number;
}

/** Velocities of the signs. Our own choice: an accent is clearly louder, a soft stroke is felt. */
const VELOCITIES: ReadonlyMap<string, number> = new Map([
  ['X', 104],
  ['x', 82],
  ['o', 46],
]);

/**
 * The strokes of a pattern beat by beat.
 *
 * @throws ReedplateError `GROOVE_INVALID` for signs that are none, or beats of another number of parts
 */
export function readPattern(pattern: Pattern, parts: number): readonly (readonly Stroke[])[] {
  const beats = typeof pattern === 'string' ? pattern.trim().split(/\s+/u) : [];
  if (beats.length === 0 || !beats.every((beat) => isBeat(beat, parts))) {
    throw new ReedplateError({
      code: 'GROOVE_INVALID',
      value: pattern,
      expected: `beats of ${parts} signs, each X, x, o or .`,
    });
  }
  return beats.map((beat) =>
    [...beat].flatMap((sign, part) => {
      const velocity = VELOCITIES.get(sign);
      return velocity === undefined ? [] : [{ part, velocity }];
    }),
  );
}

function isBeat(beat: string, parts: number): boolean {
  return beat.length === parts && [...beat].every((sign) => sign === '.' || VELOCITIES.has(sign));
}

/**
 * Where each part of a beat lies, in ticks from its beginning. Two parts of a beat of three, as in 12/8, are
 * its first and its third.
 */
export function partTicks(parts: number, ticks: number): readonly number[] {
  const isOfThree = ticks % 720 === 0;
  if (isOfThree && parts === 2) return [0, (2 * ticks) / 3];
  return Array.from({ length: parts }, (_, part) => Math.round((part * ticks) / parts));
}
