import { existsSync, readFileSync } from 'node:fs';
import { coverageTable } from './lib/coverage-table.mjs';
import { ROOT } from './lib/root.mjs';

// Prints what the last run with `--coverage` measured, by package.
const SUMMARY = `${ROOT}coverage/coverage-summary.json`;
if (existsSync(SUMMARY)) {
  for (const line of coverageTable(JSON.parse(readFileSync(SUMMARY, 'utf8')))) console.log(line);
} else {
  console.error('no coverage has been measured here: npx vitest run --coverage');
  process.exitCode = 1;
}
