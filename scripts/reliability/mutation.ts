import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { ROOT } from '../lib/root.mjs';
import { findMutants, type Mutant } from './mutation/find-mutants.js';
import { makeRandom } from './random.js';

// Changes one small thing in a package at a time and runs the package's own tests: a good test fails. A seeded
// sample of all such changes is tried, and the score is given with its 95 % interval (Wilson). Run it in a copy of
// the tree: files are written over and put back.
//   npm run mutation -- position --sample 150 [--seed 1]
const words = process.argv.slice(2);
const option = (name: string, otherwise: number): number => {
  const at = words.indexOf(`--${name}`);
  return at === -1 ? otherwise : Number(words[at + 1]);
};
const [name = ''] = words;
const SAMPLE = option('sample', 150);
const random = makeRandom(option('seed', 1));
/** Longer than the tests of any package take: what runs on forever is found out too. */
const LONGEST = 300_000;
const NOT_SOURCE =
  /\.(?:test|fixture|test-d)\.ts$|arbitraries\.ts$|(?:^|\/)index\.ts$|(?:rows|forms)[a-z-]*\.ts$/u;

interface Placed extends Mutant {
  readonly file: string;
}

const folder = `packages/${name}/src`;
const files = readdirSync(ROOT + folder, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts') && !NOT_SOURCE.test(file))
  .map((file) => `${folder}/${file}`);
const all = files.flatMap((file): readonly Placed[] =>
  findMutants(file, readFileSync(ROOT + file, 'utf8')).map((mutant) => ({ ...mutant, file })),
);

/** So many of a list, each as likely as any other, without one twice. */
function draw(mutants: readonly Placed[]): readonly Placed[] {
  const left = [...mutants];
  return Array.from({ length: Math.min(SAMPLE, left.length) }, () => {
    const [drawn] = left.splice(random(left.length), 1);
    return drawn as Placed;
  });
}

function passes(tests: readonly string[]): boolean {
  const words = ['run', ...tests, '--bail=1', '--maxWorkers=1', '--reporter=dot'];
  const { status } = spawnSync(`${ROOT}node_modules/.bin/vitest`, words, {
    cwd: ROOT,
    stdio: 'ignore',
    timeout: LONGEST,
  });
  return status === 0;
}

function survives({ file, from, to, text }: Placed): boolean {
  const before = readFileSync(ROOT + file, 'utf8');
  writeFileSync(ROOT + file, before.slice(0, from) + text + before.slice(to));
  try {
    const own = file.replace(/\.ts$/u, '.test.ts');
    // Its own test is quick, and finds most.
    if (existsSync(ROOT + own) && !passes([own])) return false;
    return passes([`packages/${name}/`]);
  } finally {
    writeFileSync(ROOT + file, before);
  }
}

/** Wilson's interval of a share, at 95 %. */
function interval(hits: number, tried: number): readonly [number, number] {
  const z = 1.96;
  const share = hits / tried;
  const middle = share + z ** 2 / (2 * tried);
  const half = z * Math.sqrt((share * (1 - share)) / tried + z ** 2 / (4 * tried ** 2));
  const whole = 1 + z ** 2 / tried;
  return [(middle - half) / whole, (middle + half) / whole];
}

const percent = (share: number): string => `${(100 * share).toFixed(1)} %`;
let killed = 0;
let tried = 0;
for (const mutant of draw(all)) {
  tried += 1;
  if (!survives(mutant)) killed += 1;
  else {
    const { file, line, kind, from, to, text } = mutant;
    const was = readFileSync(ROOT + file, 'utf8')
      .slice(from, to)
      .replaceAll(/\s+/gu, ' ');
    console.log(`survives: ${file}:${line} ${kind}: ${was} -> ${text}`);
  }
  const [low, high] = interval(killed, tried);
  // A line for each, so that a run that is stopped has said what it found.
  console.error(
    `${name}: ${killed} of ${tried} killed of ${all.length}, ${percent(killed / tried)} (${percent(low)} to ${percent(high)})`,
  );
}
