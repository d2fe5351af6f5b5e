import { fork } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { ROOT } from '../lib/root.mjs';
import type { GoesOn, Task, Told } from './mutation/child.js';
import { draw, interval, mutantsOf, type Placed } from './mutation/sample.js';
import type { Verdict } from './mutation/try-mutants.js';

// Changes one small thing in a package at a time and runs the tests of the package that meet it: a good test fails.
// A seeded sample of all such changes is tried, or all of them, and the score of a sample is given with its 95 %
// interval (Wilson). The tests run without vitest, in one process that stays: it takes a tenth of a second a change
// where a new run of vitest takes seconds. Nothing is written to the tree. With `--runs` properties are tried on no
// more cases than that: quicker, and a change that is found in rarer cases counts as not found.
//   npm run mutation -- position [--sample 150] [--seed 1] [--all] [--runs 20]
//   npm run mutation -- position /reach.ts /whole-chord.ts
const words = process.argv.slice(2);
const option = (name: string, otherwise: number): number => {
  const at = words.indexOf(`--${name}`);
  return at === -1 ? otherwise : Number(words[at + 1]);
};
const [name = ''] = words;
const seed = option('seed', 1);
const named = words.filter((word) => word.endsWith('.ts'));
const ends = named.length === 0 ? [''] : named;
const all = mutantsOf(name, ends);
const sample = option('sample', all.length);
const runs = words.includes('--runs') ? option('runs', 100) : undefined;
const drawn = draw(all, { sample, seed });
/** Longer than any test takes that is not caught in a loop: then the process is ended. */
const LONGEST = 300_000;
const CHILD = fileURLToPath(new URL('mutation/child.ts', import.meta.url));

/** Tries the sample from a place on, and tells how many verdicts came before the process ended. */
function tryFrom(first: number, hear: (told: Told) => void): Promise<number> {
  const child = fork(
    CHILD,
    [JSON.stringify({ name, ends, sample, seed, first, runs } satisfies Task)],
    {
      execArgv: [...process.execArgv, '--max-old-space-size=1500'],
      stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
    },
  );
  let heard = first;
  let isReady = false;
  const stop = () => child.kill('SIGKILL');
  let timer = setTimeout(stop, 4 * LONGEST);
  child.on('message', (message: Told | GoesOn | { readonly tests: number }) => {
    clearTimeout(timer);
    timer = setTimeout(stop, LONGEST);
    if ('goesOn' in message) return;
    isReady = true;
    if ('tests' in message)
      console.error(`${name}: ${message.tests} tests pass with nothing changed`);
    else {
      heard = message.at + 1;
      hear(message);
    }
  });
  return new Promise((done, fail) => {
    child.on('exit', () => {
      clearTimeout(timer);
      if (isReady) done(heard);
      else fail(new Error('the tests do not pass with nothing changed'));
    });
  });
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;

function describeMutant({ file, line, kind, from, to, text }: Placed): string {
  const was = readFileSync(ROOT + file, 'utf8')
    .slice(from, to)
    .replaceAll(/\s+/gu, ' ');
  return `${file}:${line} ${kind}: ${was} -> ${text}`;
}

let killed = 0;
let late = 0;
function hear({ at, verdict }: Told): void {
  const mutant = drawn[at] as Placed;
  if (verdict.by === undefined) {
    console.log(
      `survives: ${describeMutant(mutant)}${verdict.reached === 0 ? ' (met by no test)' : ''}`,
    );
  } else {
    killed += 1;
    if (verdict.late) late += 1;
    if (words.includes('--all')) console.log(`killed: ${describeMutant(mutant)} by ${verdict.by}`);
  }
}

const begin = performance.now();
let next = 0;
while (next < drawn.length) {
  next = await tryFrom(next, hear);
  if (next === drawn.length) break;
  const verdict: Verdict = { by: 'the process', late: true };
  hear({ at: next, verdict });
  next += 1;
}
const [low, high] = interval(killed, drawn.length);
const seconds = Math.round((performance.now() - begin) / 1000);
const of = drawn.length === all.length ? 'all' : `a sample (seed ${seed}) of`;
console.log(
  `${name}: ${killed} of ${drawn.length} killed, ${late} of them by running too long; ${of} ${all.length}; ` +
    `${percent(killed / drawn.length)} (${percent(low)} to ${percent(high)}); ${seconds} s`,
);
