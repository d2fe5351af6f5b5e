import {
  type HarpByNameOptions,
  type HarpLike,
  type HarpOptions,
  toHarp,
  toTuning,
} from '@reedplate/layout';
import {
  type Key,
  type KeyLike,
  type OptionNames,
  requireOptions,
  TONICS,
  toKey,
  toPitchClass,
  transposeKey,
} from '@reedplate/pitch';
import type { PositionNumber } from './position.js';
import { POSITIONS, positionByNumber } from './positions.js';

/**
 * The key in which a harp plays in a position, spelled with the signs of the harp's own key.
 *
 * @param harp a harp, or the key of its first position
 * @param position 1 to 12
 * @throws ReedplateError `KEY_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { songKeyOf } from '@reedplate/position';
 *
 * songKeyOf('C', 2).name; // => 'G'
 * songKeyOf('Bb', 12).name; // => 'Eb'
 * songKeyOf('C', 0); // throws NUMBER_RANGE
 * ```
 */
export function songKeyOf(harp: HarpLike, position: number, options: HarpByNameOptions = {}): Key {
  const home = firstPositionKey(harp, options, 'songKeyOf');
  return transposeKey(home, positionByNumber(position).semitones, {
    spelling: 'alike',
  });
}

/** Of which harps {@link harpKeyOf} tells the key. */
export type HarpKeyOptions = Pick<HarpOptions, 'tuning' | 'known'>;

const HARP_KEY_OPTIONS: OptionNames<HarpKeyOptions> = { tuning: true, known: true };

/**
 * The key printed on the harp that plays a song in a position, by the labelling convention of its
 * tuning.
 *
 * @param position 1 to 12
 * @throws ReedplateError `KEY_UNKNOWN`, `NUMBER_RANGE`, `TUNING_UNKNOWN`
 * @example
 * ```ts
 * import { harpKeyOf } from '@reedplate/position';
 *
 * harpKeyOf('G', 2).name; // => 'C'
 * harpKeyOf('Dm', 3).name; // => 'C'
 * harpKeyOf('Am', 2, { tuning: 'natural-minor' }).name; // => 'Am'
 * harpKeyOf('G', 0); // throws NUMBER_RANGE
 * ```
 */
export function harpKeyOf(songKey: KeyLike, position: number, options: HarpKeyOptions = {}): Key {
  const { tuning = 'standard', known } = requireOptions(options, HARP_KEY_OPTIONS, 'harpKeyOf');
  const { label, labelPosition } = toTuning(tuning, known);
  const tonic = toKey(toKey(songKey).tonic);
  const fifthsDown = positionByNumber(position).semitones - (labelPosition === 2 ? 7 : 0);
  const labelled = transposeKey(tonic, -fifthsDown, { spelling: 'alike' });
  return toKey(label).mode === 'minor' ? toKey(`${labelled.tonic}m`) : labelled;
}

/**
 * The position in which a harp plays a song, whatever the spelling of the keys.
 *
 * @param harp a harp, or the key of its first position
 * @throws ReedplateError `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { positionOf } from '@reedplate/position';
 *
 * positionOf('C', 'G'); // => 2
 * positionOf('F#', 'Gb'); // => 1
 * positionOf(makeHarp('Gm', { tuning: 'natural-minor' }), 'Gm'); // => 2
 * ```
 */
export function positionOf(
  harp: HarpLike,
  songKey: KeyLike,
  options: HarpByNameOptions = {},
): PositionNumber {
  const home = firstPositionKey(harp, options, 'positionOf');
  const semitones = toKey(songKey).pitchClass - home.pitchClass;
  return (POSITIONS.findIndex((position) => position.semitones === toPitchClass(semitones)) +
    1) as PositionNumber;
}

/**
 * Every spelling a band would say for a key, the given one first.
 *
 * @throws ReedplateError `KEY_UNKNOWN`
 * @example
 * ```ts
 * import { enharmonicKeys } from '@reedplate/position';
 *
 * enharmonicKeys('Gb').map((key) => key.name); // => ['Gb', 'F#']
 * enharmonicKeys('G').map((key) => key.name); // => ['G']
 * ```
 */
export function enharmonicKeys(key: KeyLike): readonly Key[] {
  const given = toKey(key);
  const others = TONICS.map((tonic) => toKey(given.mode === 'minor' ? `${tonic}m` : tonic)).filter(
    ({ name, pitchClass }) => pitchClass === given.pitchClass && name !== given.name,
  );
  return Object.freeze([given, ...others]);
}

const BY_NAME: OptionNames<HarpByNameOptions> = { known: true };

/** A key that no harp in standard tuning carries, such as Am, still has positions counted from it. */
function firstPositionKey(harp: HarpLike, options: HarpByNameOptions, what: string): Key {
  const { known } = requireOptions(options, BY_NAME, what);
  return keyOf(harp) ?? toKey(toHarp(harp, known).firstPosition);
}

function keyOf(harp: HarpLike): Key | undefined {
  if (typeof harp === 'object' && harp !== null && 'holes' in harp) return undefined;
  if (typeof harp === 'string' && /\s/u.test(harp.trim())) return undefined;
  return toKey(harp as KeyLike);
}
