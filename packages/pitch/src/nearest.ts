import leven from 'leven';

/** Longer text is no slip of a finger; measuring it would only cost time. */
const LONGEST_COMPARED = 64;

/**
 * The choice spelled most like `value`, for "did you mean": fewest edits, capitals ignored,
 * the earlier choice on a tie. `undefined` where nothing is near: more than half of the longer
 * word would have to change, or the text is longer than 64 characters.
 *
 * @internal
 * @example
 * ```ts
 * import { nearestOf } from '@reedplate/pitch';
 *
 * nearestOf('quick-chnage', ['basic', 'quick-change']); // => 'quick-change'
 * nearestOf('zzz', ['basic', 'quick-change']); // => undefined
 * ```
 */
export function nearestOf<Choice extends string>(
  value: string,
  choices: Iterable<Choice>,
): Choice | undefined {
  if (value.length > LONGEST_COMPARED) return undefined;
  const wanted = value.toLowerCase();
  let nearest: Choice | undefined;
  let fewestEdits = Number.POSITIVE_INFINITY;
  for (const choice of choices) {
    const edits = leven(wanted, choice.toLowerCase());
    const mostEdits = Math.max(wanted.length, choice.length) / 2;
    if (edits >= fewestEdits || edits > mostEdits) continue;
    nearest = choice;
    fewestEdits = edits;
  }
  return nearest;
}
