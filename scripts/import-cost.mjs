import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { ROOT } from './lib/root.mjs';

// Measures what importing costs a fresh Node process, and prints a Markdown table.
// Run after a build: node scripts/import-cost.mjs [runs]
const RUNS = Number(process.argv[2] ?? 25);

const subjects = [
  { name: 'bare node', file: undefined },
  { name: 'reedplate (umbrella)', file: 'packages/reedplate/dist/index.js' },
  { name: 'tonal 6.4.3', file: 'packages/pitch/node_modules/tonal/dist/index.js' },
].map((subject) => ({ ...subject, times: /** @type {number[]} */ ([]) }));

/** @param {string | undefined} file */
function timeOf(file) {
  const code =
    file === undefined ? '' : `await import(${JSON.stringify(pathToFileURL(ROOT + file).href)})`;
  const started = performance.now();
  const { status, stderr } = spawnSync(process.execPath, ['--input-type=module', '-e', code], {
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(stderr);
  return performance.now() - started;
}

/** @param {readonly number[]} times */
function medianOf(times) {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

// Taking turns spreads a machine's moods over all subjects alike; the first round only warms up.
for (let round = 0; round <= RUNS; round += 1) {
  for (const { file, times } of subjects) {
    const time = timeOf(file);
    if (round > 0) times.push(time);
  }
}

const [bare = Number.NaN, ours = Number.NaN, tonal = Number.NaN] = subjects.map(({ times }) =>
  medianOf(times),
);
console.log(`| import of | median of ${RUNS} (ms) | over bare node (ms) |`);
console.log('|---|---:|---:|');
for (const { name, times } of subjects) {
  const median = medianOf(times);
  console.log(`| ${name} | ${median.toFixed(1)} | ${(median - bare).toFixed(1)} |`);
}
console.log(
  `\nreedplate : tonal = ${((ours - bare) / (tonal - bare)).toFixed(2)} over bare node (Node ${process.version})`,
);
