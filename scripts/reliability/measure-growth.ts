import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { growthOf } from './growth.js';
import { READERS, type Reader } from './readers.js';

// Time against size of every reader on every pattern, from 1 kB to 1 MB, and the memory that it took.
//   npm run growth                 all, each in a process of its own so that its memory is its own
//   npm run growth -- readAbc      one reader; ends with 1 where time grows faster than size ** 1.2 from 1 kB to 1 MB
// The ratio is taken from 64 kB to 1 MB, where no starting cost hides anything. What lives longer than the young
// generation of the heap makes garbage dearer there, so that a linear reader may show 1.3: then both are looked at, and
// the ratio from 64 kB must still be far from the 2 of what reads everything again.
const [wanted] = process.argv.slice(2);
const LARGE = 2 ** 20;
const SMALL = LARGE / 16;
const SMALLEST = 2 ** 10;
const STEEPEST = 1.2;
const STEEPEST_AT_THE_END = 1.4;
const RUNS = { large: LARGE, runs: 3, fast: 100 };
const MEGABYTE = 2 ** 20;

/** Measures a reader, prints its row, and tells whether its time grows as it may. */
function measure(reader: Reader): boolean {
  const before = process.memoryUsage.rss();
  const rows = reader.patterns.map((pattern) => {
    const end = growthOf(reader, pattern, { ...RUNS, small: SMALL });
    if (end.exponent <= STEEPEST) return { name: pattern.name, ...end, steep: false };
    const whole = growthOf(reader, pattern, { ...RUNS, small: SMALLEST });
    const steep = whole.exponent > STEEPEST || end.exponent > STEEPEST_AT_THE_END;
    const said = `${whole.exponent.toFixed(2)} from 1 kB, ${end.exponent.toFixed(2)} from 64 kB`;
    console.error(`${reader.name}, ${pattern.name}: ${said}${steep ? ': too steep' : ''}`);
    return { name: pattern.name, ...end, steep };
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
  return !rows.some(({ steep }) => steep);
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
