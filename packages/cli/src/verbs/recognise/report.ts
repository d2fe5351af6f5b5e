import { type FormMatch, type RecogniseOptions, recogniseForm } from '@reedplate/form';

/** What `reedplate recognise --json` prints. */
export interface RecogniseReport {
  /** The nearest form in its key; several where they are equally near. */
  readonly best: readonly FormMatch[];
  /** The next nearest, nearest first. */
  readonly others: readonly FormMatch[];
  /** Whether more than one form or key is nearest. */
  readonly tie: boolean;
  /** Whether the nearest form is near at all: else none of the catalogue is what was played. */
  readonly near: boolean;
  /** From 0 to 1: how sure the nearest is, as `recogniseForm` counts it. */
  readonly confidence: number;
  /** The same of the form alone, in the key found. */
  readonly formConfidence: number;
  /** The same of the key alone. */
  readonly keyConfidence: number;
  /** The same in words. */
  readonly verdict: string;
}

/**
 * Which form and key some bars of chord names are, and what differs bar by bar.
 *
 * @throws ReedplateError as `recogniseForm`
 */
export function recogniseReport(bars: string, options: RecogniseOptions = {}): RecogniseReport {
  const recognition = recogniseForm(bars, options);
  return { ...recognition, verdict: sayVerdict(recognition) };
}

function sayVerdict({ best, tie, near }: Omit<RecogniseReport, 'verdict'>): string {
  const names = best.map(({ form, closing, key }) =>
    closing === null ? `${form} in ${key}` : `${form} in ${key} ending in ${closing}`,
  );
  const [first] = best;
  if (!near) return 'near no form of the catalogue';
  if (tie) return `a tie of ${names.length}: ${names.join(', ')}`;
  if (first === undefined || first.cost === 0) return `${names[0]}, bar for bar`;
  const agreement = Math.round(first.agreement * 100);
  return `nearest to ${names[0]}: ${agreement} % of the bars agree`;
}
