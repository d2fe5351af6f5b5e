import { deepFreeze, nearestOf, ReedplateError } from '@reedplate/pitch';
import { ratioCents } from './ratio.js';
import type { Temperament } from './temperament.js';
import { COMPROMISE, TEMPERAMENT_RATIOS, type TemperamentRatios } from './temperament-ratios.js';

/** Id of a temperament in the catalogue. */
export type TemperamentId =
  | 'equal'
  | (typeof TEMPERAMENT_RATIOS)[number]['id']
  | (typeof COMPROMISE)['id'];

/** Id of a temperament as a user may write it: an editor completes those of the catalogue. */
export type TemperamentName = TemperamentId | (string & Record<never, never>);

const EQUAL: Temperament = {
  id: 'equal',
  name: 'Equal',
  source: 'computed',
  cents: Array.from({ length: 12 }, () => 0),
  octaveStretch: 0,
};

/** The catalogue of temperaments, equal first. */
export const TEMPERAMENTS: readonly Temperament[] = deepFreeze([
  EQUAL,
  ...TEMPERAMENT_RATIOS.map(fromRatios),
  halveDegrees(fromRatios(COMPROMISE), COMPROMISE.halved),
]);

function fromRatios({ id, name, source, ratios }: TemperamentRatios): Temperament {
  const cents = ratios.split(' ').map((ratio, semitones) => {
    const [numerator = 1, denominator = 1] = ratio.split('/').map(Number);
    return ratioCents({ numerator, denominator }) - 100 * semitones;
  });
  return { id, name, source, cents, octaveStretch: 0 };
}

function halveDegrees(temperament: Temperament, degrees: readonly number[]): Temperament {
  const cents = temperament.cents.map((value, semitones) =>
    value !== null && degrees.includes(semitones) ? value / 2 : value,
  );
  return { ...temperament, cents };
}

const TEMPERAMENTS_BY_ID: ReadonlyMap<string, Temperament> = new Map(
  TEMPERAMENTS.map((temperament) => [temperament.id, temperament]),
);

/**
 * A temperament of the catalogue.
 *
 * @throws ReedplateError `TEMPERAMENT_UNKNOWN`, with the nearest id
 * @example
 * ```ts
 * import { temperamentById } from '@reedplate/layout';
 *
 * temperamentById('seven-limit').cents[7]; // => 1.955000865387433
 * temperamentById('just'); // throws TEMPERAMENT_UNKNOWN
 * ```
 */
export function temperamentById(id: TemperamentName): Temperament {
  const temperament = TEMPERAMENTS_BY_ID.get(id);
  if (temperament !== undefined) return temperament;
  throw new ReedplateError({
    code: 'TEMPERAMENT_UNKNOWN',
    value: id,
    expected: `a temperament: ${[...TEMPERAMENTS_BY_ID.keys()].join(', ')}`,
    nearest: typeof id === 'string' ? nearestOf(id, TEMPERAMENTS_BY_ID.keys()) : undefined,
  });
}
