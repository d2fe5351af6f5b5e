import { ReedplateError } from '@reedplate/pitch';
import type { StudyResult } from './study.js';

/**
 * Results in the order of their tunes, so that what is drawn from them does not hang on how they came together.
 *
 * @throws ReedplateError `STUDY_INVALID` for no result or results of different setups
 */
export function inOrder(results: Iterable<StudyResult>): readonly StudyResult[] {
  const all = [...results].sort((one, other) => one.number - other.number);
  const [first] = all;
  if (first === undefined) {
    throw new ReedplateError({ code: 'STUDY_INVALID', value: [], expected: 'one result or more' });
  }
  const setup = setupOf(first);
  for (const result of all) {
    requireSame(setup, setupOf(result), result.number);
    requireSame([digestOf(first)], [digestOf(result)], result.number);
  }
  return all;
}

/** What a result tells of its setup. Effort under another model is not the same figure. */
function setupOf({ model, cells }: StudyResult): readonly string[] {
  return [model, ...cells.map(({ tuning, position, level }) => `${tuning} ${position} ${level}`)];
}

/** What it does not tell, such as the weights of its model, is in its digest. */
const digestOf = ({ digest }: StudyResult): string => `of digest ${digest}`;

function requireSame(expected: readonly string[], found: readonly string[], line: number): void {
  const most = Math.max(expected.length, found.length);
  for (let at = 0; at < most; at += 1) {
    if (found[at] === expected[at]) continue;
    throw new ReedplateError({
      code: 'STUDY_INVALID',
      value: found[at] ?? 'the end',
      expected: `results of one setup (here ${expected[at] ?? 'the end'})`,
      where: { line },
    });
  }
}
