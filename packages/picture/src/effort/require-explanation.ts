import { requireShape, requireShapes } from '@reedplate/pitch';
import type { PathExplanation } from '@reedplate/playability';

const EXPLANATION = { what: 'what explainPath gives', code: 'OPTION_UNKNOWN' } as const;

/** A path with its effort taken apart, or the typed error. */
export function requireExplanation(explanation: PathExplanation): PathExplanation {
  requireShape(explanation, { path: 'object', terms: 'object', steps: 'list' }, EXPLANATION);
  requireShapes(
    explanation.steps,
    { start: 'number', effort: 'number', soundings: 'list' },
    EXPLANATION,
  );
  return explanation;
}
