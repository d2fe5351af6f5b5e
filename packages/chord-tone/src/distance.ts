import type { Sounding } from '@reedplate/layout';

/** How far one sounding lies from another. */
export interface SoundingDistance {
  /** Semitones up (negative: down). */
  readonly semitones: number;
  /** Holes up (negative: down). */
  readonly holes: number;
  /** Whether there is a breath change between the two. */
  readonly breathChange: boolean;
}

/**
 * The distance from one sounding to another, in pitch, holes and breath.
 *
 * @example
 * ```ts
 * import { distanceBetween } from '@reedplate/chord-tone';
 * import { makeHarp, soundingsAt } from '@reedplate/layout';
 *
 * const harp = makeHarp('C');
 * const [draw2] = soundingsAt(harp, 2, 'draw', { level: 'natural' });
 * const [blow4] = soundingsAt(harp, 4, 'blow', { level: 'natural' });
 * if (draw2 === undefined || blow4 === undefined) throw new Error('no sounding');
 * distanceBetween(draw2, blow4); // => { semitones: 5, holes: 2, breathChange: true }
 * ```
 */
export function distanceBetween(from: Sounding, to: Sounding): SoundingDistance {
  return Object.freeze({
    semitones: to.pitch - from.pitch,
    holes: to.hole - from.hole,
    breathChange: from.breath !== to.breath,
  });
}
