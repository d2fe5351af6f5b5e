import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import fc from 'fast-check';
import { ROOT } from '../../lib/root.mjs';
import { makeCollector, type Test } from './collect-tests.js';
import type { Mutant } from './find-mutants.js';
import { type Modules, makeModules } from './modules.js';
import type { Placed } from './sample.js';

/** What became of a change: the test that failed, `late` where one did not end, nothing where all passed. */
export type Verdict =
  | { readonly by: string; readonly late: boolean }
  | { readonly by: undefined; readonly reached: number };

/** What a test file did with nothing changed. */
interface DryFile {
  readonly file: string;
  /** Milliseconds from its beginning to its end. */
  readonly time: number;
  /** Changes that are met while the file is loaded: any of its tests may see them. */
  readonly atLoad: ReadonlySet<number>;
  readonly tests: readonly DryTest[];
}

interface DryTest {
  readonly reached: ReadonlySet<number>;
  readonly time: number;
}

declare global {
  var mutantReached: (mutant: number) => number;
  var mutantTest: () => unknown;
}

const collector = makeCollector();
const standIns = new Map([['vitest', collector.module]]);
const runTest = new Script('mutantTest()');

/** Runs a test, and stops it when it takes too long; loops within a promise go on. */
async function runWithin(run: () => unknown, longest: number): Promise<void> {
  globalThis.mutantTest = run;
  await runTest.runInThisContext({ timeout: longest });
}

/** A text in which each place that may be changed says that it was met. */
function withMarks(text: string, marks: readonly (readonly [number, Mutant])[]): string {
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

/** Tries the tests of a package on changes of its source. */
export interface Trials {
  /** How many tests there are. */
  readonly tests: number;
  /** Makes one change and runs the tests that meet it, until one fails. */
  readonly tryMutant: (mutant: number) => Promise<Verdict>;
}

/**
 * Runs all tests with nothing changed, to know which of them meet which change.
 *
 * @throws Error where a test fails
 */
export async function prepareTrials(
  testFiles: readonly string[],
  mutants: readonly Placed[],
): Promise<Trials> {
  const { SEED = '20261125' } = process.env;
  // A property that fails has failed: the smallest case does not matter here.
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(SEED), endOnFailure: true });
  const modules = makeModules(standIns);
  const marked = makeModules(standIns, (file) => {
    const marks = [...mutants.entries()].filter(([, mutant]) => ROOT + mutant.file === file);
    return withMarks(readFileSync(file, 'utf8'), marks);
  });
  const dry: DryFile[] = [];
  for (const file of testFiles) {
    dry.push(await runDry(file, () => marked.loadAnew(ROOT + file)));
    collector.take(ROOT + file, () => modules.load(ROOT + file));
  }
  return {
    tests: dry.reduce((sum, { tests }) => sum + tests.length, 0),
    tryMutant: (mutant) => tryMutant(mutant, mutants[mutant] as Placed, dry, modules),
  };
}

async function runDry(file: string, load: () => void): Promise<DryFile> {
  let reached = new Set<number>();
  globalThis.mutantReached = (mutant) => reached.add(mutant).size;
  const begin = performance.now();
  const collected = collector.take(ROOT + file, load);
  const atLoad = reached;
  const tests: DryTest[] = [];
  for (const { title, run } of collected) {
    reached = new Set();
    const start = performance.now();
    try {
      await run();
    } catch (cause) {
      throw new Error(`${file}: ${title} fails with nothing changed`, { cause });
    }
    tests.push({ reached, time: performance.now() - start });
  }
  return { file, time: performance.now() - begin, atLoad, tests };
}

const meets = ({ atLoad, tests }: DryFile, mutant: number): boolean =>
  atLoad.has(mutant) || tests.some(({ reached }) => reached.has(mutant));

async function tryMutant(
  mutant: number,
  { file, from, to, text }: Placed,
  dry: readonly DryFile[],
  modules: Modules,
): Promise<Verdict> {
  const before = readFileSync(ROOT + file, 'utf8');
  const changed = { file: ROOT + file, text: before.slice(0, from) + text + before.slice(to) };
  const own = file.replace(/\.ts$/u, '.test.ts');
  // Its own test first, which finds most; then the quickest.
  const order = (one: DryFile) => (one.file === own ? 0 : one.time);
  const reaching = dry.filter((one) => meets(one, mutant)).toSorted((a, b) => order(a) - order(b));
  for (const one of reaching) {
    const load = () => modules.loadChanged(ROOT + one.file, changed);
    const failure = await firstFailure(one, mutant, load);
    if (failure !== undefined) return failure;
  }
  return { by: undefined, reached: reaching.length };
}

/** Far longer than a test takes, also on a machine that is busy with other things. */
const longest = (time: number): number => Math.ceil(5_000 + 20 * time);

async function firstFailure(
  { file, time, tests: dryTests }: DryFile,
  mutant: number,
  load: () => void,
): Promise<Verdict | undefined> {
  const failed = (title: string, error: unknown): Verdict => {
    const { code } = Object(error) as { readonly code?: unknown };
    return { by: `${file}: ${title}`, late: code === 'ERR_SCRIPT_EXECUTION_TIMEOUT' };
  };
  let tests: readonly Test[] = [];
  const take = () => {
    tests = collector.take(ROOT + file, load);
  };
  try {
    await runWithin(take, longest(time));
  } catch (error) {
    return failed('does not load', error);
  }
  // Tests that meet the change before the others, which may see what these left behind.
  const isMet = (at: number) => dryTests[at]?.reached.has(mutant) ?? true;
  const places = [...tests.keys()];
  for (const at of [...places.filter(isMet), ...places.filter((at) => !isMet(at))]) {
    const { title, run } = tests[at] as Test;
    try {
      await runWithin(run, longest(dryTests[at]?.time ?? 0));
    } catch (error) {
      return failed(title, error);
    }
  }
  return undefined;
}
