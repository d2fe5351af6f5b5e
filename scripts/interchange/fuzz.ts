import {
  readAbc,
  readMidi,
  readMusicXml,
  readPiece,
  writeAbc,
  writeMidi,
  writeMusicXml,
} from '@reedplate/interchange';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import { detectTab, parseTimedTab } from '@reedplate/tab';
import { zipSync } from 'fflate';
import { JUMP_SAMPLES } from '../../packages/interchange/src/notation/jump-samples.fixture.js';
import { FORM_SHEETS, LINE_SHEETS } from './samples.js';

// Feeds readers with arbitrary and mutated bytes: only typed errors, and none takes long.
// Run: npx tsx scripts/interchange/fuzz.ts [cases a reader] [seed] [part of a reader's name]; ends with 1 where one fails.
const CASES = Number(process.argv[2] ?? 100_000);
const SEED = Number(process.argv[3] ?? 1);
/** Longest that a case of some kilobytes may take, in milliseconds, on a busy machine. */
const LONGEST = 2000;

/** A generator of numbers below a bound that says the same for the same seed (mulberry32). */
function makeRandom(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return Math.floor((((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32) * below);
  };
}

type Random = ReturnType<typeof makeRandom>;

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
const sheets = [...LINE_SHEETS.slice(0, 4), ...FORM_SHEETS.slice(0, 4)];
const small = makeLine(
  [67, 70, 72].map((pitch, at) => ({ start: at * 960, duration: 700, pitch })),
);
const xml = [
  encode(writeMusicXml({ line: small })),
  encode(writeMusicXml({ line: small }, { words: ['-2', "-3'", '+4'] })),
];

interface Target {
  readonly name: string;
  readonly read: (bytes: Uint8Array) => unknown;
  readonly good: readonly Uint8Array[];
}

const harp = makeHarp('C');
const tabs = [
  "-2:2 -3' (+4+5):1/2 r:3 | 6o",
  '4↑ 4↓ 3↓″',
  '4B 3D 6OB [4B5B]',
  '456i 4e',
  '4+ 4 12',
];
const decode = (bytes: Uint8Array): string => new TextDecoder().decode(bytes);

const TARGETS: readonly Target[] = [
  {
    name: 'readAbc',
    read: (bytes) => readAbc(bytes),
    good: [
      ...sheets.map((sheet) => encode(writeAbc(sheet))),
      ...JUMP_SAMPLES.map(({ abc }) => encode(abc)),
      encode('X:1\nM:4/4\nL:1/4\nP:A(BA)2\nK:C\nP:A\n|:C4:|\nP:B\nD4|]\n'),
    ],
  },
  {
    name: 'readMidi',
    read: (bytes) => readMidi(bytes),
    good: sheets.map((sheet) => writeMidi(sheet)),
  },
  {
    name: 'readMusicXml',
    read: (bytes) => readMusicXml(bytes),
    good: [...xml, ...JUMP_SAMPLES.map((sample) => encode(sample.xml))],
  },
  {
    name: 'readMusicXml, compressed',
    read: (bytes) => readMusicXml(bytes),
    good: xml.map((score) => zipSync({ 'score.xml': score })),
  },
  {
    name: 'parseTimedTab and detectTab',
    read: (bytes) => [attempt(() => detectTab(decode(bytes))), parseTimedTab(decode(bytes))],
    good: tabs.map(encode),
  },
  {
    name: 'readPiece',
    read: (bytes) => readPiece(bytes, { harp }),
    good: [...sheets.map((sheet) => writeMidi(sheet)), ...tabs.map(encode), ...xml],
  },
];

function attempt(work: () => unknown): void {
  try {
    work();
  } catch (error) {
    if (!isReedplateError(error)) throw error;
  }
}

function mutate(good: Uint8Array, random: Random): Uint8Array {
  let bytes = good;
  for (let changes = 1 + random(8); changes > 0; changes -= 1) {
    const at = random(bytes.length + 1);
    const how = random(5);
    if (how === 0) bytes = bytes.slice(0, at);
    else if (how === 1) bytes = splice(bytes, at, 1 + random(4), new Uint8Array());
    else if (how === 2) bytes = splice(bytes, at, 0, bytes.slice(random(at + 1), at));
    else bytes = splice(bytes, at, 1, Uint8Array.of(how === 3 ? random(256) : 0xff * random(2)));
  }
  return bytes;
}

function splice(bytes: Uint8Array, at: number, gone: number, put: Uint8Array): Uint8Array {
  return Uint8Array.from([...bytes.slice(0, at), ...put, ...bytes.slice(at + gone)]);
}

function anyBytes(random: Random): Uint8Array {
  return Uint8Array.from({ length: random(200) }, () => random(256));
}

function fuzz({ name, read, good }: Target): boolean {
  const random = makeRandom(SEED);
  const counts = new Map<string, number>();
  let longest = 0;
  for (let at = 0; at < CASES; at += 1) {
    const bytes =
      at % 4 === 0 ? anyBytes(random) : mutate(good[at % good.length] as Uint8Array, random);
    const begun = performance.now();
    const outcome = outcomeOf(read, bytes);
    longest = Math.max(longest, performance.now() - begun);
    counts.set(outcome, (counts.get(outcome) ?? 0) + 1);
    if (outcome.startsWith('UNTYPED'))
      console.error(name, outcome, Buffer.from(bytes).toString('base64'));
  }
  const shown = [...counts].map(([outcome, count]) => `${outcome} ${count}`).join(', ');
  const memory = Math.round(process.memoryUsage().rss / 1024 / 1024);
  console.log(`| ${name} | ${CASES} | ${shown} | ${longest.toFixed(0)} | ${memory} |`);
  return longest < LONGEST && ![...counts.keys()].some((outcome) => outcome.startsWith('UNTYPED'));
}

function outcomeOf(read: Target['read'], bytes: Uint8Array): string {
  try {
    read(bytes);
    return 'read';
  } catch (error) {
    return isReedplateError(error) ? error.code : `UNTYPED ${String(error).slice(0, 80)}`;
  }
}

console.log('| reader | cases | outcomes | longest case (ms) | memory after (MB) |');
console.log('|---|---:|---|---:|---:|');
const passed = TARGETS.filter(({ name }) => name.includes(process.argv[4] ?? '')).map(fuzz);
process.exitCode = passed.every(Boolean) ? 0 : 1;
