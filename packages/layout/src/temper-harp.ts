import {
  deepFreeze,
  frequency,
  type OptionNames,
  parseKey,
  ReedplateError,
  requireOptions,
  toPitchClass,
} from '@reedplate/pitch';
import type { Harp } from './harp.js';
import { type ImpureFifth, impureFifths } from './impure-fifths.js';
import { harpRange } from './range.js';
import { requireWithin } from './ratio.js';
import type { Breath, Hole } from './sounding.js';
import type { ReedCents, Temperament } from './temperament.js';
import { type HarpLike, toHarp } from './to-harp.js';
import { type TemperamentLike, toTemperament } from './to-temperament.js';
import type { KnownTunings } from './to-tuning.js';

/** A reed as it is tuned. */
export interface TemperedReed {
  readonly hole: Hole;
  readonly breath: Breath;
  /** MIDI number of the note it is meant for. */
  readonly pitch: number;
  /** Cents above equal temperament. */
  readonly cents: number;
  /** In Hz. */
  readonly frequency: number;
}

/** A harp with every reed's frequency. */
export interface TemperedHarp {
  readonly harp: Harp;
  /** Id of the temperament; `by-reed` where cents were given for each reed. */
  readonly temperament: string;
  /** Frequency of A4 in Hz, from which the equal-tempered tonic of first position follows. */
  readonly a4: number;
  /** From hole 1 up, blow before draw. */
  readonly reeds: readonly TemperedReed[];
  /**
   * Where the temperament does not hold: fifths on one breath, up to three holes apart, that it leaves
   * more than ten cents off 3:2. Just temperaments are made for the chords of the standard layout.
   */
  readonly impureFifths: readonly ImpureFifth[];
}

/** How {@link temperHarp} tunes. */
export interface TemperOptions {
  /** Frequency of A4 in Hz, 300 to 600; default 440. */
  readonly a4?: number;
  /** Temperaments and tunings of one's own that may be named by their id. */
  readonly known?: KnownTunings;
}

const TEMPER_OPTIONS: OptionNames<TemperOptions> = { a4: true, known: true };

/**
 * The frequencies of a harp's reeds in a temperament. Deviations are counted from the equal
 * temperament of A4, and from the tonic of first position, which itself does not deviate; octaves
 * are stretched from the lowest such tonic within the harp.
 *
 * The just temperaments of the catalogue are made for the chords of the standard layout. On another
 * layout they are laid over its reeds degree by degree, and `impureFifths` says where that is sour.
 *
 * @param temperament an id of the catalogue, a temperament, or cents for every reed
 * @throws ReedplateError `TEMPERAMENT_UNKNOWN`, `NUMBER_RANGE` for A4 or a cents value, or
 * `TEMPERAMENT_INCOMPLETE` naming the hole and breath that no pitch is given for
 * @example
 * ```ts
 * import { temperHarp } from '@reedplate/layout';
 *
 * const { reeds } = temperHarp('C', 'seven-limit');
 * reeds[9]?.cents.toFixed(1); // => '-29.2'
 * reeds[0]?.frequency; // => 261.6255653005986
 * const minor = temperHarp('Gm natural-minor', 'seven-limit');
 * minor.impureFifths[0]?.cents.toFixed(0); // => '653'
 * temperHarp('C', 'just'); // throws TEMPERAMENT_UNKNOWN
 * ```
 */
export function temperHarp(
  given: HarpLike,
  temperament: TemperamentLike,
  options: TemperOptions = {},
): TemperedHarp {
  const { a4 = 440, known } = requireOptions(options, TEMPER_OPTIONS, 'temperHarp');
  const harp = toHarp(given, known);
  requireWithin(a4, 300, 600, 'a frequency of A4 in Hz');
  const tempered = toTemperament(temperament, known);
  const centsOf = 'cents' in tempered ? degreeCents(harp, tempered) : reedCents(tempered);
  const tune = (hole: Hole, breath: Breath, pitch: number): TemperedReed => {
    const cents = centsOf({ hole, breath, pitch });
    return { hole, breath, pitch, cents, frequency: frequency(pitch + cents / 100, { a4 }) };
  };
  const reeds = harp.holes.flatMap(({ hole, blow, draw }) => [
    tune(hole, 'blow', blow),
    tune(hole, 'draw', draw),
  ]);
  return deepFreeze({
    harp,
    temperament: 'cents' in tempered ? tempered.id : 'by-reed',
    a4,
    reeds,
    impureFifths: impureFifths(reeds),
  });
}

type ReedPitch = Pick<TemperedReed, 'hole' | 'breath' | 'pitch'>;
type CentsOf = (reed: ReedPitch) => number;

function degreeCents(harp: Harp, { id, cents, octaveStretch }: Temperament): CentsOf {
  const tonic = parseKey(harp.firstPosition).pitchClass;
  const { lowest } = harpRange(harp);
  const lowestTonic = lowest + toPitchClass(tonic - lowest);
  return ({ hole, breath, pitch }) => {
    const deviation = cents[toPitchClass(pitch - tonic)] ?? null;
    if (deviation === null) throw incomplete(id, hole, breath);
    return requireCents(deviation + octaveStretch * Math.floor((pitch - lowestTonic) / 12));
  };
}

function reedCents(rows: ReedCents): CentsOf {
  return ({ hole, breath }) => {
    const cents = rows[breath]?.[hole - 1];
    if (cents === undefined) throw incomplete('by-reed', hole, breath);
    return requireCents(cents);
  };
}

function requireCents(cents: unknown): number {
  return requireWithin(cents, -1200, 1200, 'cents of a reed');
}

function incomplete(value: string, hole: Hole, breath: Breath): ReedplateError {
  return new ReedplateError({
    code: 'TEMPERAMENT_INCOMPLETE',
    value,
    expected: 'a pitch for every reed of the harp',
    where: { hole, breath },
  });
}
