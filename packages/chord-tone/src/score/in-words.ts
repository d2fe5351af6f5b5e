import type { ChordDegree } from '@reedplate/pitch';
import type { Suggestion } from './score-types.js';

/** A list as it is said: `5`, `5 and 6`, `5, 6 and 10`. */
export function listInWords(items: readonly (string | number)[]): string {
  if (items.length < 2) return items.join('');
  return `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
}

/** Bars as they are said, runs of three and more as a range: `bars 1 to 4 and 9`. */
export function barsInWords(bars: readonly number[]): string {
  const runs: number[][] = [];
  for (const bar of bars) {
    const last = runs.at(-1);
    if (last?.at(-1) === bar - 1) last.push(bar);
    else runs.push([bar]);
  }
  const said = runs.flatMap((run): readonly (string | number)[] =>
    run.length > 2 ? [`${run[0]} to ${run.at(-1)}`] : run,
  );
  return `${bars.length === 1 ? 'bar' : 'bars'} ${listInWords(said)}`;
}

/** A number of things: `1 note`, `2 notes`. */
export function countInWords(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? '' : 's'}`;
}

/** What could be played: `C5, the root (4)`. */
export function suggestionInWords({ name, degree, tab }: Suggestion): string {
  const tone = `${name}, the ${TONE_NAMES.get(degree) ?? degree}`;
  return tab === null ? tone : `${tone} (${tab})`;
}

/** What players call the tones that are suggested. */
const TONE_NAMES: ReadonlyMap<ChordDegree, string> = new Map([
  ['1', 'root'],
  ['b3', 'flat third'],
  ['3', 'third'],
  ['b7', 'flat seventh'],
  ['7', 'major seventh'],
]);
