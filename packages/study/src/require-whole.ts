import { ReedplateError } from '@reedplate/pitch';

/**
 * Refuses results that are not those of a whole study: a tune that is there twice, or one that is missing between
 * the first tune and the last of the results.
 *
 * @param numbers of all results, of tunes that could not be read too
 * @throws ReedplateError `STUDY_INVALID`
 */
export function requireWhole(numbers: readonly number[], isPartial: boolean): void {
  const sorted = Float64Array.from(numbers).sort();
  for (const [at, number] of sorted.entries()) {
    if (sorted[at - 1] === number) throw invalid(number, 'each tune once, and this is there twice');
    const missing = (sorted[at - 1] ?? 0) + 1;
    if (isPartial || number === missing) continue;
    const many = number - 1 === missing ? `${missing}` : `${missing} to ${number - 1}`;
    throw invalid(number, `all tunes of a study, and before this there is no tune ${many}`);
  }
}

function invalid(value: number, expected: string): ReedplateError {
  return new ReedplateError({ code: 'STUDY_INVALID', value, expected });
}
