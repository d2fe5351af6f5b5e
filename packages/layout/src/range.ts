import { type OptionNames, requireInteger, requireOptions } from '@reedplate/pitch';
import { SOUNDING_OPTIONS, type SoundingOptions, soundingsOfPitch } from './soundings.js';
import { type HarpByNameOptions, type HarpLike, harpByName, toHarp } from './to-harp.js';

/** A range of pitches, both ends included, as MIDI numbers. */
export interface PitchRange {
  readonly lowest: number;
  readonly highest: number;
}

/**
 * The range of a harp's reeds.
 *
 * @example
 * ```ts
 * import { harpRange, makeHarp } from '@reedplate/layout';
 *
 * harpRange(makeHarp('C')); // => { lowest: 60, highest: 96 }
 * ```
 */
export function harpRange(harp: HarpLike, options: HarpByNameOptions = {}): PitchRange {
  const { holes } = harpByName(harp, options, 'harpRange');
  const reeds = holes.flatMap(({ blow, draw }) => [blow, draw]);
  return Object.freeze({ lowest: Math.min(...reeds), highest: Math.max(...reeds) });
}

/** What {@link missingPitches} looks at. */
export interface MissingOptions extends SoundingOptions {
  /** Lowest pitch asked about (inclusive), a MIDI number; default the harp's lowest reed. */
  readonly lowest?: number;
  /** Highest pitch asked about (inclusive), a MIDI number; default the harp's highest reed. */
  readonly highest?: number;
}

const MISSING_OPTIONS: OptionNames<MissingOptions> = {
  ...SOUNDING_OPTIONS,
  lowest: true,
  highest: true,
};

/**
 * The pitches of a range that cannot be sounded, rising.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a range outside MIDI or upside down
 * @example
 * ```ts
 * import { makeHarp, missingPitches } from '@reedplate/layout';
 *
 * const harp = makeHarp('C');
 * missingPitches(harp); // => [63, 75, 78, 82, 85, 92]
 * missingPitches(harp, { level: 'overbends' }); // => []
 * missingPitches(harp, { lowest: 70, highest: 60 }); // throws NUMBER_RANGE
 * ```
 */
export function missingPitches(given: HarpLike, options: MissingOptions = {}): readonly number[] {
  requireOptions(options, MISSING_OPTIONS, 'missingPitches');
  const harp = toHarp(given, options.known);
  const range = harpRange(harp);
  const { lowest = range.lowest, highest = range.highest, ...which } = options;
  requireInteger(lowest, { min: 0, max: 127, what: 'a MIDI note number' });
  requireInteger(highest, { min: lowest, max: 127, what: 'a MIDI note number' });
  const asked = Array.from({ length: highest - lowest + 1 }, (_, index) => lowest + index);
  return Object.freeze(asked.filter((pitch) => soundingsOfPitch(harp, pitch, which).length === 0));
}
