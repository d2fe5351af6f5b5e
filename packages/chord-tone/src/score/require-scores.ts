import { requireShapes } from '@reedplate/pitch';
import type { Score } from './score-types.js';

/**
 * Scores of takes, or the typed error.
 *
 * @internal
 */
export function requireScores(scores: readonly Score[]): readonly Score[] {
  const words = {
    what: 'a list of scores, as scoreLine gives them',
    code: 'OPTION_UNKNOWN',
  } as const;
  const lists = { bars: 'list', changes: 'list', feedback: 'list' } as const;
  return requireShapes(scores, { total: 'number', measures: 'object', ...lists }, words);
}
