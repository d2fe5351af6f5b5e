import { deepFreeze } from '@reedplate/pitch';
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
  cents: [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  octaveStretch: 0,
};

/** The catalogue of temperaments, equal first. */
export const TEMPERAMENTS: readonly Temperament[] = /* @__PURE__ */ (() =>
  deepFreeze([
    EQUAL,
    ...TEMPERAMENT_RATIOS.map(fromRatios),
    halveDegrees(fromRatios(COMPROMISE), COMPROMISE.halved),
  ]))();

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

/** The catalogue by id. */
export const TEMPERAMENTS_BY_ID: ReadonlyMap<string, Temperament> = /* @__PURE__ */ (() =>
  new Map(TEMPERAMENTS.map((temperament) => [temperament.id, temperament])))();
