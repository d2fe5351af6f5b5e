import { readFileSync } from 'node:fs';
import { Script } from 'node:vm';
import fc from 'fast-check';
import { ROOT } from '../../lib/root.mjs';
import { makeCollector, type Test } from './collect-tests.js';
import { makeFewRuns } from './few-runs.js';
import { type Marks, makeMarks, withMarks } from './marks.js';
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
  /** Most cases of its properties: none where it passes only with all of them. */
  readonly runs: number | undefined;
}

declare global {
  var mutantTest: () => unknown;
}

const collector = makeCollector();

/** Told before each test: on a busy machine only this shows that nothing hangs. */
let goesOn: () => void = () => {};
const fewRuns = makeFewRuns();
const standIns = new Map([
  ['vitest', collector.module],
  ['fast-check', fewRuns.module],
]);
const runTest = new Script('mutantTest()');

/** Runs a test, and stops it when it takes too long; loops within a promise go on. */
async function runWithin(run: () => unknown, longest: number): Promise<void> {
  goesOn();
  globalThis.mutantTest = run;
  await runTest.runInThisContext({ timeout: longest });
}

/** Tries the tests of a package on changes of its source. */
export interface Trials {
  /** How many tests there are. */
  readonly tests: number;
  /** Makes one change and runs the tests that meet it, until one fails. */
  readonly tryMutant: (mutant: number) => Promise<Verdict>;
}

/** How tests are run. */
export interface TrialOptions {
  /** Most cases of a property, where its test passes with so few; default as many as it asks for. */
  readonly runs?: number | undefined;
  /** Called before each test. */
  readonly tell?: () => void;
}

/**
 * Runs all tests with nothing changed, to know which of them meet which change.
 *
 * @throws Error where a test fails
 */
export async function prepareTrials(
  testFiles: readonly string[],
  mutants: readonly Placed[],
  { runs, tell = () => {} }: TrialOptions = {},
): Promise<Trials> {
  goesOn = tell;
  const { SEED = '20261125' } = process.env;
  // A property that fails has failed: the smallest case does not matter here.
  fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: Number(SEED), endOnFailure: true });
  const modules = makeModules(standIns);
  const marked = makeModules(standIns, (file) => {
    const marks = [...mutants.entries()].filter(([, mutant]) => ROOT + mutant.file === file);
    return withMarks(readFileSync(file, 'utf8'), marks);
  });
  const dry: DryFile[] = [];
  const marks = makeMarks(mutants.length);
  for (const file of testFiles) {
    dry.push(await runDry(file, { marks, runs }, () => marked.loadAnew(ROOT + file)));
    collector.take(ROOT + file, () => modules.load(ROOT + file));
  }
  return {
    tests: dry.reduce((sum, { tests }) => sum + tests.length, 0),
    tryMutant: (mutant) => tryMutant(mutant, mutants[mutant] as Placed, dry, modules),
  };
}

async function runDry(
  file: string,
  { marks, runs }: { readonly marks: Marks; readonly runs: number | undefined },
  load: () => void,
): Promise<DryFile> {
  const begin = performance.now();
  const collected = collector.take(ROOT + file, load);
  const atLoad = marks.take();
  const tests: DryTest[] = [];
  for (const { title, run } of collected) {
    goesOn();
    const start = performance.now();
    const isEnough = runs !== undefined && (await passesWith(runs, run));
    if (!isEnough) await runWhole(run, `${file}: ${title}`);
    const time = performance.now() - start;
    tests.push({ time, reached: marks.take(), runs: isEnough ? runs : undefined });
  }
  return { file, time: performance.now() - begin, atLoad, tests };
}

/** Whether a test passes with so few cases of its properties. */
async function passesWith(runs: number, run: () => unknown): Promise<boolean> {
  fewRuns.most = runs;
  try {
    await run();
    return true;
  } catch {
    return false;
  }
}

async function runWhole(run: () => unknown, name: string): Promise<void> {
  fewRuns.most = undefined;
  try {
    await run();
  } catch (cause) {
    throw new Error(`${name} fails with nothing changed`, { cause });
  }
}

/** The places of the tests that may see a change: those that meet it; all, where loading does. */
function placesOf({ atLoad, tests }: DryFile, mutant: number): readonly number[] {
  const places = [...tests.keys()];
  return atLoad.has(mutant) ? places : places.filter((at) => tests[at]?.reached.has(mutant));
}

async function tryMutant(
  mutant: number,
  { file, from, to, text }: Placed,
  dry: readonly DryFile[],
  modules: Modules,
): Promise<Verdict> {
  const before = readFileSync(ROOT + file, 'utf8');
  const changed = { file: ROOT + file, text: before.slice(0, from) + text + before.slice(to) };
  const own = file.replace(/\.ts$/u, '.test.ts');
  const reaching = dry
    .map((one) => ({ one, places: placesOf(one, mutant) }))
    .filter(({ places }) => places.length > 0)
    // Its own test first, which finds most; then the quickest.
    .toSorted(
      (a, b) => Number(b.one.file === own) - Number(a.one.file === own) || costOf(a) - costOf(b),
    );
  for (const { one, places } of reaching) {
    const load = () => modules.loadChanged(ROOT + one.file, changed);
    const failure = await firstFailure(one, places, load);
    if (failure !== undefined) return failure;
  }
  return { by: undefined, reached: reaching.length };
}

const costOf = ({
  one,
  places,
}: {
  readonly one: DryFile;
  readonly places: readonly number[];
}): number => places.reduce((sum, at) => sum + (one.tests[at]?.time ?? 0), 0);

/** Far longer than a test takes, also on a machine that has hardly any time for it. */
const longest = (time: number): number => Math.ceil(30_000 + 20 * time);

/** A test that the change took away: nobody would see that. */
const NOT_THERE: Test = { title: 'not there', run: () => undefined };

async function firstFailure(
  { file, time, tests: dryTests }: DryFile,
  places: readonly number[],
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
  for (const at of places) {
    const { title, run } = tests[at] ?? NOT_THERE;
    const { time: dryTime, runs } = dryTests[at] as DryTest;
    fewRuns.most = runs;
    try {
      await runWithin(run, longest(dryTime));
    } catch (error) {
      return failed(title, error);
    }
  }
  return undefined;
}
