import { draw, mutantsOf, testsOf } from './sample.js';
import { prepareTrials, type Verdict } from './try-mutants.js';

// One process that tries changes in turn, and tells each verdict to the process that began it. A change may make
// it run out of memory, or loop within a promise: then another takes over after it.

/** What is tried: a sample of a package's changes, from one of its places on. */
export interface Task {
  readonly name: string;
  /** How the names of the files end that are changed; an empty text for all. */
  readonly ends: readonly string[];
  readonly sample: number;
  readonly seed: number;
  readonly first: number;
  /** Most cases of a property; none for as many as it asks for. */
  readonly runs?: number | undefined;
}

/** What is told of a change, by its place in the sample. */
export interface Told {
  readonly at: number;
  readonly verdict: Verdict;
}

/** Told before each test. */
export interface GoesOn {
  readonly goesOn: true;
}

const { name, ends, sample, seed, first, runs } = JSON.parse(process.argv[2] ?? '') as Task;
const drawn = draw(mutantsOf(name, ends), { sample, seed });
const { tests, tryMutant } = await prepareTrials(testsOf(name), drawn, {
  runs,
  tell: () => process.send?.({ goesOn: true } satisfies GoesOn),
});
process.send?.({ tests });
for (let at = first; at < drawn.length; at += 1) {
  process.send?.({ at, verdict: await tryMutant(at) } satisfies Told);
}
process.disconnect();
