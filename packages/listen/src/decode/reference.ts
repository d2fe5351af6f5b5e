import type { Frame } from '../frames/frames.js';

/** Clearer than this a frame says how an instrument is tuned. */
const CLEAR = 0.9;
/** Below this the pitches lie anywhere, and say nothing: bends, slides. */
const AGREEMENT = 0.3;

/**
 * Semitones by which all that is clear lies above the pitches of A4 = 440 hertz, from -0.5 to 0.5: the mean
 * direction of their fractions around a semitone, as bends to either side outweigh each other.
 */
export function referenceOf(frames: readonly Frame[]): number {
  let [x, y, count] = [0, 0, 0];
  for (const { candidates, clarity } of frames) {
    const [likeliest] = candidates;
    if (likeliest === undefined || clarity < CLEAR) continue;
    const angle = 2 * Math.PI * likeliest.pitch;
    x += Math.cos(angle);
    y += Math.sin(angle);
    count += 1;
  }
  if (count === 0 || Math.hypot(x, y) / count < AGREEMENT) return 0;
  return Math.atan2(y, x) / (2 * Math.PI);
}
