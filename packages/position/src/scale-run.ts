import {
  type HarpLike,
  SOUNDING_OPTIONS,
  type Sounding,
  type SoundingOptions,
  toHarp,
} from '@reedplate/layout';
import type { KeyLike, ScaleLike } from '@reedplate/pitch';
import { requireOptions, toKey } from '@reedplate/pitch';
import { easeOf } from './easiest.js';
import { type ScaleNote, scaleNotes } from './scale-map.js';

/** A note of a run, with the one way it is played. */
export interface RunNote extends Omit<ScaleNote, 'soundings'> {
  /** Null where the note cannot be sounded. */
  readonly sounding: Sounding | null;
}

/**
 * A scale up and down a harp, from the lowest tonic to the highest and back, the top note once.
 * Each note takes its easiest sounding, and of alike ones that nearest to the hole before. A harp
 * without two tonics runs through all notes of the scale that it spans.
 *
 * @param scale a scale by name
 * @throws ReedplateError `KEY_UNKNOWN`, `SCALE_UNKNOWN`, `OPTION_UNKNOWN` for a wrong level
 * @example
 * ```ts
 * import { scaleRun } from '@reedplate/position';
 *
 * const run = scaleRun('C', 'G', 'minor pentatonic', { level: 'bends' });
 * run.slice(0, 4).map(({ sounding }) => `${sounding?.hole} ${sounding?.breath} ${sounding?.depth}`); // => ['2 draw 0', '3 draw 1', '4 blow 0', '4 draw 0']
 * ```
 */
export function scaleRun(
  given: HarpLike,
  songKey: KeyLike,
  scale: ScaleLike,
  options: SoundingOptions = {},
): readonly RunNote[] {
  const { known } = requireOptions(options, SOUNDING_OPTIONS, 'scaleRun');
  const harp = toHarp(given, known);
  const rising = tonicToTonic(scaleNotes(harp, toKey(songKey), scale, options));
  const notes = [...rising, ...rising.slice(0, -1).reverse()];
  const run: RunNote[] = [];
  let hole = 1;
  for (const { pitch, name, degree, soundings } of notes) {
    const sounding = nearestEasy(soundings, hole);
    hole = sounding?.hole ?? hole;
    run.push(Object.freeze({ pitch, name, degree, sounding: sounding ?? null }));
  }
  return Object.freeze(run);
}

function tonicToTonic(notes: readonly ScaleNote[]): readonly ScaleNote[] {
  const first = notes.findIndex(({ degree }) => degree === '1');
  const last = notes.findLastIndex(({ degree }) => degree === '1');
  return first === last ? notes : notes.slice(first, last + 1);
}

/** Of the soundings that are as easy as the first, the one nearest to a hole. */
function nearestEasy(soundings: readonly Sounding[], hole: number): Sounding | undefined {
  const [easiest] = soundings;
  if (easiest === undefined) return undefined;
  const alike = soundings.filter((sounding) => easeOf(sounding) === easeOf(easiest));
  const distance = (sounding: Sounding): number => Math.abs(sounding.hole - hole);
  return alike.reduce((near, sounding) => (distance(sounding) < distance(near) ? sounding : near));
}
