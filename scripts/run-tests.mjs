import { readFileSync } from 'node:fs';
import { ROOT } from './lib/root.mjs';
import { tool } from './lib/tools.mjs';

const REPORT = `${ROOT}coverage/tests.json`;

/** Runs every test once, with coverage, and keeps a report for {@link countTests}. */
export function runTests() {
  try {
    tool('vitest', [
      'run',
      '--coverage',
      '--reporter=default',
      '--reporter=json',
      `--outputFile=${REPORT}`,
    ]);
  } catch (error) {
    console.log(countTests());
    throw error;
  }
}

/** One line that counts the tests of the last run. */
export function countTests() {
  const { numPassedTests, numFailedTests } = JSON.parse(readFileSync(REPORT, 'utf8'));
  return `${numPassedTests} passed, ${numFailedTests} failed`;
}
