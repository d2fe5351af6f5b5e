import type { Frame } from '../frames/frames.js';

/** How likely a frame is under each thing that may be going on, as logarithms. */
export interface Likelihoods {
  readonly silence: number;
  /** For each pitch that is asked about: while a note is held, and while it begins. */
  readonly held: Float64Array;
  readonly attack: Float64Array;
}

/** Numbers of the model, chosen on takes of our own making (`validity/`): semitones, decibels and clarity. */
const HELD_SPREAD = 0.3;
const STRAY_SHARE = 0.04;
/** Semitones over which a stray pitch may lie. */
const STRAY_RANGE = 60;
/** Semitones from below and from above from which an attack may glide to its note. */
const GLIDE_BELOW = 2;
const GLIDE_ABOVE = 1;
/** Share of the moments of an attack that are noise and no pitch yet. */
const NOISE_SHARE = 0.2;
const CLARITY_MIDDLE = 0.6;
const CLARITY_WIDTH = 0.06;
/** Decibels below the loudest at which a sound is as likely to be room as to be played. */
const LEVEL_MIDDLE = -38;
const LEVEL_WIDTH = 3;
const LEAST = 1e-4;

/** The likelihoods of a frame; `loudest` is the level of the loudest playing, in semitones the `offset` of A4. */
export function likelihoodsOf(
  { candidates, clarity, level }: Frame,
  pitches: readonly number[],
  loudest: number,
  offset: number,
): Likelihoods {
  const isClear = logistic((clarity - CLARITY_MIDDLE) / CLARITY_WIDTH);
  const isLoud = logistic((level - loudest - LEVEL_MIDDLE) / LEVEL_WIDTH);
  const isPitched = candidates.length === 0 ? 0 : Math.max(LEAST, isClear * isLoud);
  const noise = (NOISE_SHARE * isLoud * (1 - isClear)) / STRAY_RANGE;
  const floor = LEAST / STRAY_RANGE;
  const held = new Float64Array(pitches.length);
  const attack = new Float64Array(pitches.length);
  for (const [at, pitch] of pitches.entries()) {
    const near = densitiesOf(candidates, pitch + offset);
    held[at] = Math.log(isPitched * near.held + floor);
    attack[at] = Math.log((1 - NOISE_SHARE) * isPitched * near.attack + noise + floor);
  }
  return { silence: Math.log((1 - isPitched + LEAST) / STRAY_RANGE), held, attack };
}

/** Densities of what is heard while a pitch is held, and while a note glides to it. */
function densitiesOf(candidates: Frame['candidates'], centre: number) {
  let held = STRAY_SHARE / STRAY_RANGE;
  let attack = STRAY_SHARE / STRAY_RANGE;
  for (const { pitch, weight } of candidates) {
    const off = pitch - centre;
    if (Math.abs(off) > GLIDE_BELOW) continue;
    held += (1 - STRAY_SHARE) * weight * bell(off, HELD_SPREAD);
    if (off <= GLIDE_ABOVE) attack += weight / (GLIDE_BELOW + GLIDE_ABOVE);
  }
  return { held, attack };
}

function bell(off: number, spread: number): number {
  return Math.exp(-0.5 * (off / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI));
}

function logistic(x: number): number {
  return 1 / (1 + Math.exp(-x));
}
