import { createHash } from 'node:crypto';
import { mkdirSync, writeFileSync } from 'node:fs';
import { ROOT } from '../lib/root.mjs';
import { outcomeOf } from './growth.js';
import { midiOf } from './midi-patterns.js';
import { mutateBytes, mutateMidi, mutateText } from './mutate.js';
import { mutateJson, mutateXml } from './mutate-structure.js';
import { makeRandom, oneOf, type Random } from './random.js';
import { READERS, type Reader } from './readers.js';
import { SEEDS } from './seeds.js';

// Throws changed files and texts at every reader: each must be read, or refused by a typed error, in time
// and memory that its size allows. What fails is kept in scripts/reliability/corpus.
//   npm run fuzz -- --minutes 5 [--seed 1] [--reader readAbc]
//   npm run fuzz -- --cases 1000000      so many for each parser of text, a fifth for each reader of
//                                        files, a fiftieth for each search
const words = process.argv.slice(2);
const option = (name: string): string | undefined => {
  const at = words.indexOf(`--${name}`);
  return at === -1 ? undefined : words[at + 1];
};
const CASES = Number(option('cases') ?? Number.POSITIVE_INFINITY);
const MINUTES = Number(option('minutes') ?? (CASES === Number.POSITIVE_INFINITY ? 1 : 1e6));
const SEED = Number(option('seed') ?? 1);
const WANTED = option('reader');

/** Of the cases asked for, by kind. */
const SHARES = { text: 1, file: 1 / 5, search: 1 / 50 } as const;

/** Milliseconds of the processor for an input: so many for any, and so many for each byte; a search may take more. */
const TIME = { forAll: 500, aByte: { text: 0.05, file: 0.05, search: 5 } } as const;
/** Bytes that the process may hold, all readers tried: what a reader keeps is soon seen. */
const MEMORY = 1.5 * 2 ** 30;

// Where an error was made is of no interest, and costs more than most readers.
Error.stackTraceLimit = 0;

const TEXTS = new Map(
  Object.entries(SEEDS).map(([name, seeds]) => [
    name,
    seeds.filter((each) => typeof each === 'string'),
  ]),
);

function makeCase({ name, kind }: Reader, random: Random): string | Uint8Array {
  const seeds = SEEDS[name] ?? [];
  const seed = oneOf(seeds, random);
  if (random(20) === 0) return Uint8Array.from({ length: random(300) }, () => random(256));
  if (name === 'readMidi' && random(3) > 0) return mutateMidi(seed as Uint8Array, midiOf, random);
  if (typeof seed !== 'string') return mutateBytes(seed, random);
  if (kind === 'file' && random(8) === 0)
    return mutateBytes(new TextEncoder().encode(seed), random);
  // Most changes of a text are refused at its first sign: structure is changed for itself.
  if (seed.startsWith('{') && random(3) > 0) return mutateJson(seed, random);
  if (seed.startsWith('<') && random(3) > 0) return mutateXml(seed, random);
  return mutateText(seed, TEXTS.get(name) ?? [], random);
}

/** What is wrong with how a reader took an input; undefined where all is well. */
function faultOf(
  { read, kind }: Reader,
  input: string | Uint8Array,
  outcomes: Map<string, number>,
) {
  const began = performance.now();
  try {
    const outcome = outcomeOf(() => read(input));
    outcomes.set(outcome, (outcomes.get(outcome) ?? 0) + 1);
  } catch (error) {
    return `an error without a code: ${String(error).slice(0, 200)}`;
  }
  // Nobody works longer than the clock says: only where that is long is the processor asked.
  const most = TIME.forAll + TIME.aByte[kind] * input.length;
  if (performance.now() - began <= most) return undefined;
  const before = process.cpuUsage();
  outcomeOf(() => read(input));
  const { user, system } = process.cpuUsage(before);
  const milliseconds = (user + system) / 1000;
  return milliseconds > most ? `${milliseconds} ms` : undefined;
}

function keep({ name }: Reader, input: string | Uint8Array): string {
  const folder = `${ROOT}scripts/reliability/corpus/${name}`;
  mkdirSync(folder, { recursive: true });
  const hash = createHash('sha256').update(input).digest('hex').slice(0, 12);
  const file = `${folder}/${hash}.${typeof input === 'string' ? 'txt' : 'bin'}`;
  writeFileSync(file, input);
  return file;
}

function fuzz(reader: Reader, until: number): number {
  const random = makeRandom(SEED);
  const outcomes = new Map<string, number>();
  let cases = 0;
  let faults = 0;
  const most = CASES * SHARES[reader.kind];
  for (; cases < most && performance.now() < until && faults < 10; cases += 1) {
    const input = makeCase(reader, random);
    const isFull = cases % 64 === 0 && process.memoryUsage.rss() > MEMORY;
    const fault = isFull ? 'too much memory' : faultOf(reader, input, outcomes);
    if (fault === undefined) continue;
    faults += 1;
    console.error(`${reader.name}: ${fault}: ${keep(reader, input)}`);
  }
  const said = [...outcomes].sort((a, b) => b[1] - a[1]).map(([code, count]) => `${code} ${count}`);
  console.log(`| ${reader.name} | ${cases} | ${faults} | ${said.join(', ')} |`);
  return faults;
}

const readers = READERS.filter(({ name }) => WANTED === undefined || name === WANTED);
console.log(`seed ${SEED}\n\n| reader | cases | failures | outcomes |\n|---|---:|---:|---|`);
const share = (MINUTES * 60_000) / readers.length;
let failures = 0;
for (const reader of readers) failures += fuzz(reader, performance.now() + share);
process.exitCode = failures === 0 ? 0 : 1;
