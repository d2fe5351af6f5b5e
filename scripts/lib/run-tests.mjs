import { existsSync, readFileSync, rmSync } from 'node:fs';
import { ROOT } from './root.mjs';
import { tool } from './tools.mjs';

const REPORT = `${ROOT}coverage/tests.json`;

/** Drops the report of an earlier run. */
export const forgetTests = () => rmSync(REPORT, { force: true });

/** Runs every test once, with coverage, and keeps a report for {@link countTests}. */
export function runTests() {
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile=${REPORT}`];
  tool('vitest', ['run', '--coverage', ...reporters]);
}

/** One line that counts the tests of the last run; undefined where none has left a report. */
export function countTests() {
  if (!existsSync(REPORT)) return undefined;
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(REPORT, 'utf8'));
  return `${numPassedTests} passed, ${numFailedTests} failed`;
}
