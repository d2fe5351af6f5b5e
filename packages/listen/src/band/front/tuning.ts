import type { Peaks } from './peaks.js';

/** Pitches that tell a tuning: above the bass, whose reading is coarse, and below what is out of tune anyway. */
const LOWEST = 52;
const HIGHEST = 92;

/**
 * Semitones, from -0.5 to 0.5, by which a sound is tuned above an A4 of 440 hertz: the direction in which all its
 * tones lie from the semitones, added up on a circle. Half a semitone sharp of one key is half a semitone flat of
 * the next: no sound tells the two apart.
 */
export function tuningOf({ pitches, strengths }: Pick<Peaks, 'pitches' | 'strengths'>): number {
  let [real, imaginary] = [0, 0];
  for (const [at, pitch] of pitches.entries()) {
    if (pitch < LOWEST || pitch > HIGHEST) continue;
    const weight = (strengths[at] as number) ** 2;
    real += weight * Math.cos(2 * Math.PI * pitch);
    imaginary += weight * Math.sin(2 * Math.PI * pitch);
  }
  return Math.atan2(imaginary, real) / (2 * Math.PI);
}
