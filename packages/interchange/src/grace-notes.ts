import type { TimedNote } from '@reedplate/line';

/**
 * For each note of a line the beginning of the note that it leads to, if it is a grace note that leads to
 * one; `undefined` for all others.
 *
 * @param notes in the order of a line
 */
export function graceTargets(notes: readonly TimedNote[]): readonly (number | undefined)[] {
  const targets: (number | undefined)[] = [];
  let target: number | undefined;
  for (let first = notes.length - 1; first >= 0; ) {
    const start = (notes[first] as TimedNote).start;
    let before = first;
    while (before >= 0 && notes[before]?.start === start) before -= 1;
    const together = notes.slice(before + 1, first + 1);
    // A grace note may begin with the note that it leads to.
    if (together.some(({ grace }) => grace !== true)) target = start;
    for (const [at, { grace }] of together.entries()) {
      targets[before + 1 + at] = grace === true ? target : undefined;
    }
    first = before;
  }
  return targets;
}
