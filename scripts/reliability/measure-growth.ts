import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { growthOf } from './growth.js';
import { READERS, type Reader } from './readers.js';

// Time against size of every reader on every pattern, from 1 kB to 1 MB, and the memory that it took.
//   npm run growth                 all, each in a process of its own so that its memory is its own
//   npm run growth -- readAbc      one reader; ends with 1 where time grows faster than size ** 1.2
const [wanted] = process.argv.slice(2);
const LARGE = 2 ** 20;
/** Between these two the ratio is taken: below, starting costs drown it. */
const SMALL = LARGE / 16;
const STEEPEST = 1.2;
const MEGABYTE = 2 ** 20;

/** Measures a reader, prints its row, and tells whether its time grows as it may. */
function measure(reader: Reader): boolean {
  const before = process.memoryUsage.rss();
  const rows = reader.patterns.map((pattern) => {
    const growth = growthOf(reader, pattern, { small: SMALL, large: LARGE, runs: 3, fast: 100 });
    if (growth.exponent > STEEPEST) {
      const tiny = growthOf(reader, pattern, { small: 512, large: 1024, runs: 1, fast: 1e9 });
      console.error(`${reader.name}, ${pattern.name}: ${JSON.stringify({ tiny, ...growth })}`);
    }
    return { name: pattern.name, ...growth };
  });
  const steepest = rows.reduce((most, row) => (row.exponent > most.exponent ? row : most));
  const longest = rows.reduce((most, row) => (row.large > most.large ? row : most));
  // What the system counts in kilobytes.
  const memory = process.resourceUsage().maxRSS * 1024 - before;
  const cells = [
    reader.name,
    rows.length,
    steepest.exponent === 0 ? 'none above 100 ms' : steepest.name,
    steepest.exponent.toFixed(2),
    longest.large.toFixed(0),
    longest.name,
    (memory / MEGABYTE).toFixed(0),
  ];
  console.log(`| ${cells.join(' | ')} |`);
  return steepest.exponent <= STEEPEST;
}

/** The same in a process of its own. */
function measureAlone({ name }: Reader): boolean {
  const words = [...process.execArgv, fileURLToPath(import.meta.url), name];
  return spawnSync(process.execPath, words, { stdio: 'inherit' }).status === 0;
}

const one = READERS.find(({ name }) => name === wanted);
if (one === undefined && wanted !== undefined) {
  throw new Error(`no reader ${wanted}; there are ${READERS.map(({ name }) => name).join(', ')}`);
}
if (one === undefined) {
  console.log(
    '| reader | patterns | steepest | exponent | longest for 1 MB (ms) | pattern | memory, all patterns (MB) |',
  );
  console.log('|---|---:|---|---:|---:|---|---:|');
}
const grew = (one === undefined ? READERS.map(measureAlone) : [measure(one)]).some((fine) => !fine);
process.exitCode = grew ? 1 : 0;
