import { ReedplateError, requireShape, requireShapes } from '@reedplate/pitch';
import type { FormMatch, FormRecognition } from './recognition.js';

const RECOGNITION = {
  what: 'a recognition, as recogniseForm gives it',
  code: 'FORM_INVALID',
} as const;

/**
 * Which form some bars are, in English, without a capital or a full stop.
 *
 * @throws ReedplateError `FORM_INVALID` for what is no recognition
 * @example
 * ```ts
 * import { describeRecognition, recogniseForm } from '@reedplate/form';
 *
 * const bars = 'G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 | D9';
 * describeRecognition(recogniseForm(bars)); // => 'nearest to Quick-change twelve-bar in G: 99 % of the bars agree'
 * ```
 */
export function describeRecognition(recognition: FormRecognition): string {
  const { best, tie, near } = requireShape(recognition, { best: 'list' }, RECOGNITION);
  requireShapes(best, { name: 'text', key: 'text', agreement: 'number' }, RECOGNITION);
  const names = best.map(nameOfMatch);
  const [first] = best;
  if (!near) return 'near no form of the catalogue';
  if (tie) return `a tie of ${names.length}: ${names.join(', ')}`;
  if (first === undefined)
    throw new ReedplateError({
      code: RECOGNITION.code,
      value: best,
      expected: 'at least one match',
    });
  if (first.cost === 0) return `${names[0]}, bar for bar`;
  const agreement = Math.round(first.agreement * 100);
  return `nearest to ${names[0]}: ${agreement} % of the bars agree`;
}

/** The form that was matched, in its key, with the ending that it has in place of its own. */
function nameOfMatch({ name, closing, key }: FormMatch): string {
  return closing === null ? `${name} in ${key}` : `${name} in ${key} ending in ${closing}`;
}
