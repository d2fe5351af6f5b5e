import { nearestOf, ReedplateError, requireShape } from '@reedplate/pitch';
import type { ReedCents, Temperament } from './temperament.js';
import { TEMPERAMENTS_BY_ID, type TemperamentName } from './temperaments.js';
import { type KnownTunings, requireKnown } from './to-tuning.js';

/** A temperament, its id, or cents for every reed. */
export type TemperamentLike = Temperament | TemperamentName | ReedCents;

/**
 * The temperament itself, given as one or by its id; cents by reed stay as they are.
 *
 * @throws ReedplateError `TEMPERAMENT_UNKNOWN`
 */
export function toTemperament(
  temperament: TemperamentLike,
  known: KnownTunings = {},
): Temperament | ReedCents {
  if (isTemperament(temperament)) return requireCentsOf(temperament);
  const { temperaments = [] } = requireKnown(known);
  const found =
    temperaments.find(({ id }) => id === temperament) ??
    TEMPERAMENTS_BY_ID.get(temperament as string);
  if (found !== undefined) return found;
  const ids = [...temperaments.map(({ id }) => id), ...TEMPERAMENTS_BY_ID.keys()];
  throw new ReedplateError({
    code: 'TEMPERAMENT_UNKNOWN',
    value: temperament,
    expected: `a temperament: ${ids.join(', ')}`,
    nearest: typeof temperament === 'string' ? nearestOf(temperament, ids) : undefined,
  });
}

function isTemperament(value: unknown): value is Temperament | ReedCents {
  return typeof value === 'object' && value !== null && ('cents' in value || 'blow' in value);
}

function requireCentsOf(temperament: Temperament | ReedCents): Temperament | ReedCents {
  const code = 'TEMPERAMENT_UNKNOWN';
  // A reed without cents is named by temperHarp.
  if (!('cents' in temperament)) return temperament;
  const what = 'a temperament, as readScala gives it';
  const shape = { id: 'text', cents: 'list', octaveStretch: 'number' } as const;
  return requireShape(temperament, shape, { what, code });
}
