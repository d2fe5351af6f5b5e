import { requireOneOf } from '@reedplate/pitch';
import { FEELS, type Feel } from './types.js';

/**
 * The feel, if it is one; `slow`, as players say it, is the slow blues of twelve eighths.
 *
 * @internal
 */
export function toFeel(feel: unknown): Feel {
  return requireOneOf(feel === 'slow' ? 'slow-12/8' : feel, FEELS, { what: 'a feel' });
}
