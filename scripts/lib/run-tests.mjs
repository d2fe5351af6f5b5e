import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { relative } from 'node:path';
import { recall, remember } from './cache.mjs';
import { coverageTable } from './coverage-table.mjs';
import { ROOT } from './root.mjs';
import { ownHash, testHashes } from './test-inputs.mjs';
import { tool } from './tools.mjs';

const REPORT = `${ROOT}coverage/tests.json`;
const COVERAGE = `${ROOT}coverage/coverage-summary.json`;
const GENERATED = 'test/generated';
const PASSED = 'tests';

/** Tests that passed earlier and rest on nothing that has changed since. */
let leftOut = 0;

/** Drops the report of an earlier run. */
export const forgetTests = () => rmSync(REPORT, { force: true });

/**
 * Runs every test that has not passed on what is there now, those beside a changed file first, and keeps
 * a report for {@link countTests}. Where all are run, their coverage is measured, printed and asked for too.
 */
export async function runTests() {
  const generated = existsSync(ROOT + GENERATED)
    ? readdirSync(ROOT + GENERATED).map((file) => `${GENERATED}/${file}`)
    : [];
  const hashes = await testHashes(generated.filter((file) => file.endsWith('.test.ts')));
  const passed = recall(PASSED);
  const stale = [...hashes].filter(([file, hash]) => passed[file]?.split(' ')[0] !== hash);
  const all = stale.length === hashes.size;
  leftOut = countPassed(hashes, passed);
  if (stale.length === 0) {
    console.log('nothing that a test rests on has changed since it last passed');
    return;
  }
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile=${REPORT}`];
  const files = all ? ['--coverage'] : stale.map(([file]) => file);
  const changed = stale.filter(([file]) => passed[file]?.split(' ')[2] !== ownHash(file));
  const env = { TESTS_FIRST: JSON.stringify(all ? [] : changed.map(([file]) => file)) };
  try {
    tool('vitest', ['run', ...reporters, ...files], { env });
  } finally {
    rememberPassed(hashes, passed);
    if (all) printCoverage();
  }
}

/** The shares of branches and lines by package, also where one is below its limit. */
function printCoverage() {
  if (!existsSync(COVERAGE)) return;
  for (const line of coverageTable(JSON.parse(readFileSync(COVERAGE, 'utf8')))) console.log(line);
}

/**
 * @param {ReadonlyMap<string, string>} hashes
 * @param {Record<string, string>} passed
 */
function countPassed(hashes, passed) {
  const counts = [...hashes].map(([file, hash]) => {
    const [was, count] = passed[file]?.split(' ') ?? [];
    return was === hash ? Number(count) : 0;
  });
  return counts.reduce((sum, count) => sum + count, 0);
}

/**
 * Keeps the hash of each file whose tests all passed, how many they are, and the hash of what is its own.
 *
 * @param {ReadonlyMap<string, string>} hashes
 * @param {Record<string, string>} before
 */
function rememberPassed(hashes, before) {
  if (!existsSync(REPORT)) return;
  const { testResults } = JSON.parse(readFileSync(REPORT, 'utf8'));
  const now = Object.fromEntries(Object.entries(before).filter(([file]) => hashes.has(file)));
  for (const { name, status, assertionResults } of testResults) {
    const file = relative(ROOT, name);
    if (status === 'passed')
      now[file] = `${hashes.get(file)} ${assertionResults.length} ${ownHash(file)}`;
    else delete now[file];
  }
  remember(PASSED, now);
}

/** One line that counts the tests of this run; undefined where the run did not come to them. */
export function countTests() {
  const before = leftOut === 0 ? '' : `, ${leftOut} skipped`;
  if (!existsSync(REPORT)) return leftOut === 0 ? undefined : `0 passed, 0 failed${before}`;
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(REPORT, 'utf8'));
  return `${numPassedTests} passed, ${numFailedTests} failed${before}`;
}
