import {
  degreeAbove,
  type Key,
  type Scale,
  type ScaleDegree,
  toPitchClass,
} from '@reedplate/pitch';
import { type Easiest, easeOf } from './easiest.js';

/** A scale above the song's tonic, as a harp has it. */
export interface ScaleShare {
  readonly name: string;
  /** Share of its notes between the harp's lowest and highest reed that can be sounded, 0 to 1. */
  readonly coverage: number;
  /** Mean ease of those notes, 0 (none can be sounded) to 1 (all unbent). */
  readonly ease: number;
  /** Degrees that cannot be sounded in one octave or more. */
  readonly incomplete: readonly ScaleDegree[];
  /** Degrees that cannot be sounded in any octave. */
  readonly missing: readonly ScaleDegree[];
}

/** How a harp has a scale above the tonic of a key, over the range of its reeds. */
export function scaleShare(
  { lowest, highest, byPitch }: Easiest,
  key: Key,
  scale: Scale,
): ScaleShare {
  const wanted = new Set(
    scale.semitones.map((semitones) => toPitchClass(key.pitchClass + semitones)),
  );
  const found = new Set<ScaleDegree>();
  const lacking = new Set<ScaleDegree>();
  let notes = 0;
  let sounded = 0;
  let ease = 0;
  for (let pitch = lowest; pitch <= highest; pitch += 1) {
    const pitchClass = toPitchClass(pitch);
    if (!wanted.has(pitchClass)) continue;
    const degree = degreeAbove(pitchClass, key.pitchClass);
    const easiest = byPitch.get(pitch);
    notes += 1;
    sounded += easiest === undefined ? 0 : 1;
    ease += easiest === undefined ? 0 : easeOf(easiest);
    (easiest === undefined ? lacking : found).add(degree);
  }
  const degrees = scale.semitones.map((semitones) => degreeAbove(semitones, 0));
  return Object.freeze({
    name: scale.name,
    coverage: notes === 0 ? 0 : sounded / notes,
    ease: notes === 0 ? 0 : ease / notes,
    incomplete: Object.freeze(degrees.filter((degree) => lacking.has(degree))),
    missing: Object.freeze(degrees.filter((degree) => !found.has(degree))),
  });
}
