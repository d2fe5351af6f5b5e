import { spawnSync } from 'node:child_process';
import { performance } from 'node:perf_hooks';
import { pathToFileURL } from 'node:url';
import { ROOT } from './lib/root.mjs';

// Measures what importing costs a fresh Node process, and prints a Markdown table.
// Run after a build: node scripts/import-cost.mjs [runs]
const RUNS = Number(process.argv[2] ?? 25);

const foundation = ['pitch', 'form', 'layout', 'position'].map(
  (room) => `packages/${room}/dist/index.js`,
);

const subjects = [
  { name: 'bare node', files: [] },
  { name: 'pitch, form, layout and position', files: foundation },
  { name: 'reedplate', files: ['packages/reedplate/dist/index.js'] },
  { name: 'tonal 6.4.3', files: ['packages/pitch/node_modules/tonal/dist/index.js'] },
  { name: 'the command: `reedplate pick --key G`', words: ['pick', '--key', 'G'] },
].map((subject) => ({ ...subject, times: /** @type {number[]} */ ([]) }));

/** @param {{ files?: readonly string[], words?: readonly string[] }} subject */
function timeOf({ files = [], words }) {
  const code = files
    .map((file) => `await import(${JSON.stringify(pathToFileURL(ROOT + file).href)});`)
    .join('');
  const args =
    words === undefined
      ? ['--input-type=module', '-e', code]
      : [`${ROOT}packages/reedplate/dist/bin.js`, ...words];
  const started = performance.now();
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
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
  for (const subject of subjects) {
    const time = timeOf(subject);
    if (round > 0) subject.times.push(time);
  }
}

const medians = subjects.map(({ times }) => medianOf(times));
const [bare = Number.NaN] = medians;
const tonal = medians[3] ?? Number.NaN;
console.log(
  `| import of | median of ${RUNS} (ms) | over bare node (ms) | of tonal's | of bare node |`,
);
console.log('|---|---:|---:|---:|---:|');
for (const [at, { name }] of subjects.entries()) {
  const median = medians[at] ?? Number.NaN;
  const share = ((median - bare) / (tonal - bare)).toFixed(2);
  const figures = [
    median.toFixed(1),
    (median - bare).toFixed(1),
    share,
    (median / bare).toFixed(2),
  ];
  console.log(`| ${[name, ...figures].join(' | ')} |`);
}
console.log(`\nNode ${process.version}`);
