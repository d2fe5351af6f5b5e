import type { Mutant } from './find-mutants.js';

// Who meets which change: each place that may be changed tells a number when it is computed.

declare global {
  var mutantReached: (mutant: number) => number;
}

/** A text in which each place that may be changed says that it was met. */
export function withMarks(text: string, marks: readonly (readonly [number, Mutant])[]): string {
  const inserts = marks.flatMap(
    ([
      mutant,
      {
        around: [from, to],
      },
    ]) => [
      { at: from, wide: to - from, opens: true, text: `(mutantReached(${mutant}), (` },
      { at: to, wide: to - from, opens: false, text: '))' },
    ],
  );
  // From the end, so that what stands before keeps its place; at one place, what is wider lies outside.
  const inOrder = inserts.toSorted(
    (a, b) =>
      b.at - a.at ||
      Number(a.opens) - Number(b.opens) ||
      (a.opens ? a.wide - b.wide : b.wide - a.wide),
  );
  let marked = text;
  for (const { at, text: insert } of inOrder)
    marked = marked.slice(0, at) + insert + marked.slice(at);
  return marked;
}

/** What was met since it was last taken. */
export interface Marks {
  readonly take: () => ReadonlySet<number>;
}

/** Which changes are met: a place in a list is set, since this runs within the loops of the source. */
export function makeMarks(mutants: number): Marks {
  const marks = new Uint8Array(mutants);
  globalThis.mutantReached = (mutant) => {
    marks[mutant] = 1;
    return 1;
  };
  const take = () => {
    const reached = new Set([...marks.keys()].filter((mutant) => marks[mutant] === 1));
    marks.fill(0);
    return reached;
  };
  return { take };
}
