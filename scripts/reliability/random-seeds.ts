import { spawnSync } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { readFileSync, rmSync } from 'node:fs';
import { ROOT } from '../lib/root.mjs';

// Runs the laws again and again, each time from another seed, and says each failure with its seed.
//   npm run random-seeds -- --minutes 30 [packages/form ...]
// A failure is repeated by: SEED=<its seed> npx vitest run <its file>
const words = process.argv.slice(2);
const at = words.indexOf('--minutes');
const MINUTES = at === -1 ? 30 : Number(words[at + 1]);
const given = words.filter((_, index) => at === -1 || (index !== at && index !== at + 1));
const PLACES = given.length > 0 ? given : ['packages'];
const REPORT = `${ROOT}coverage/random-seeds.json`;

interface Report {
  readonly numTotalTests: number;
  readonly testResults: readonly {
    readonly name: string;
    readonly assertionResults: readonly { readonly status: string; readonly fullName: string }[];
  }[];
}

const until = performance.now() + MINUTES * 60_000;
let tests = 0;
let seeds = 0;
const failures: string[] = [];
while (performance.now() < until) {
  const seed = randomInt(2 ** 31);
  rmSync(REPORT, { force: true });
  spawnSync('npx', ['vitest', 'run', ...PLACES, '--reporter=json', `--outputFile=${REPORT}`], {
    cwd: ROOT,
    env: { ...process.env, SEED: `${seed}` },
    timeout: Math.max(1, Math.round(until - performance.now())),
    stdio: 'ignore',
  });
  const report = readReport();
  // The last run is cut off when the time is over.
  if (report === undefined) break;
  seeds += 1;
  tests += report.numTotalTests;
  for (const { name, assertionResults } of report.testResults) {
    for (const { fullName, status } of assertionResults) {
      if (status === 'failed') failures.push(`SEED=${seed} ${name.replace(ROOT, '')}: ${fullName}`);
    }
  }
}
for (const failure of failures) console.error(failure);
console.log(`${seeds} seeds, ${tests} tests, ${failures.length} failures in ${MINUTES} minutes`);
process.exitCode = failures.length === 0 ? 0 : 1;

function readReport(): Report | undefined {
  try {
    return JSON.parse(readFileSync(REPORT, 'utf8'));
  } catch {
    return undefined;
  }
}
