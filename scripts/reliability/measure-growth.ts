import { growthOf } from './growth.js';
import { READERS } from './readers.js';

// Time against size of every reader on every pattern, from 1 kB to 1 MB.
//   npm run growth                 all
//   npm run growth -- readAbc      one reader; ends with 1 where time grows faster than size ** 1.2
const [wanted, largest = '1048576'] = process.argv.slice(2);
const LARGE = Number(largest);
/** Between these two the ratio is taken: below, starting costs drown it. */
const SMALL = LARGE / 16;
const STEEPEST = 1.2;

console.log('| reader | patterns | steepest | exponent | longest for 1 MB (ms) | pattern |');
console.log('|---|---:|---|---:|---:|---|');
let failed = 0;
for (const reader of READERS.filter(({ name }) => wanted === undefined || name === wanted)) {
  const rows = reader.patterns.map((pattern) => {
    const tiny = growthOf(reader, pattern, { small: 512, large: 1024, runs: 1, fast: 1e9 });
    const growth = growthOf(reader, pattern, { small: SMALL, large: LARGE, runs: 3, fast: 100 });
    if (growth.exponent > STEEPEST) {
      failed += 1;
      console.error(`${reader.name}, ${pattern.name}: ${JSON.stringify({ tiny, ...growth })}`);
    }
    return { name: pattern.name, ...growth };
  });
  const steepest = rows.reduce((most, row) => (row.exponent > most.exponent ? row : most));
  const longest = rows.reduce((most, row) => (row.large > most.large ? row : most));
  console.log(
    `| ${reader.name} | ${rows.length} | ${steepest.exponent === 0 ? 'none above 100 ms' : steepest.name} | ${steepest.exponent.toFixed(2)} | ${longest.large.toFixed(0)} | ${longest.name} |`,
  );
}
process.exitCode = failed === 0 ? 0 : 1;
