import { spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from '../lib/root.mjs';
import { buildCommand } from './faults/build-command.js';

// Every verb that writes, run to each of its calls that change a disk in turn, which fails with a full disk, without permission,
// with a fault of the disk, or at which the process is killed; over an old file and where there is none.
// Afterwards the old or the new file must be there, never half of one, and the fault be said in one line.
//   npm run fault-sweep
//   npm run fault-sweep -- lesson study       some of them, by the name in the table below
const TAKE = `${ROOT}examples/first-blues/take.json`;
const SONG = ['--form', 'quick-change', '--key', 'G'];
const HARP = ['--harp', 'C'];
const folder = mkdtempSync(join(tmpdir(), 'reedplate-faults-'));
const TUNES = join(folder, 'tunes.ndjson');
const tune = { key: 'G', line: { notes: [{ start: 0, duration: 960, pitch: 67 }] } };
writeFileSync(TUNES, `${JSON.stringify(tune)}\n`.repeat(20));

/** What is typed, the file that it writes being `{}`. */
const VERBS: Readonly<Record<string, readonly string[]>> = {
  'practice .mid': ['practice', ...SONG, ...HARP, '-o', '{}.mid'],
  'practice .musicxml': ['practice', ...SONG, ...HARP, '-o', '{}.musicxml'],
  'practice .json': ['practice', ...SONG, ...HARP, '-o', '{}.json'],
  'practice .abc': ['practice', ...SONG, ...HARP, '-o', '{}.abc'],
  'practice .tab': ['practice', ...SONG, ...HARP, '-o', '{}.tab'],
  compose: ['compose', ...SONG, ...HARP, '-o', '{}.mid'],
  backing: ['backing', ...SONG, '-o', '{}.mid'],
  convert: ['convert', TAKE, '{}.abc', ...SONG, '--quantise', '1/8,1/8t'],
  handout: ['handout', ...SONG, ...HARP, '-o', '{}.html'],
  picture: ['picture', 'harp', ...HARP, '-o', '{}.svg'],
  'picture chart': ['picture', 'chart', ...SONG, '-o', '{}.svg'],
  lesson: ['lesson', ...SONG, '--level', 'natural', '-o', '{}'],
  study: ['study', TUNES, '--workers', '1', '--out', '{}.ndjson'],
};
/** A study adds to its own file and a lesson makes a folder: neither writes over what is there. */
const NEW_ONLY: readonly string[] = ['study', 'lesson'];
const CALLS = [
  'mkdtempSync',
  'openSync',
  'writeSync',
  'fsyncSync',
  'renameSync',
  'closeSync',
] as const;
const CODES = ['ENOSPC', 'EACCES', 'EIO', 'KILL'] as const;
const OLD = 'what was there before\n';

interface Ended {
  readonly status: number | null;
  readonly err: string;
}

const asked = process.argv.slice(2);
const unknown = asked.find((name) => VERBS[name] === undefined);
if (unknown !== undefined)
  throw new Error(`no ${unknown}; there are ${Object.keys(VERBS).join(', ')}`);

const command = await buildCommand();

function runCommand(words: readonly string[], fault?: string): Ended {
  const shim =
    fault === undefined ? [] : ['--import', `${ROOT}scripts/reliability/faults/shim.mjs`];
  const { status, stderr } = spawnSync('node', [...shim, command, ...words], {
    env: { ...process.env, FAULT: fault ?? '' },
    encoding: 'utf8',
  });
  return { status, err: stderr };
}

let runs = 0;
let met = 0;
const wrong: string[] = [];

/** A verb with the file or folder that it writes, and what it writes there where nothing fails. */
interface Swept {
  readonly verb: string;
  readonly words: readonly string[];
  readonly place: string;
  readonly whole: string;
  readonly hasOld: boolean;
}

/** What is at a place: a file's bytes, those of each file of a folder, or nothing. */
function contentOf(place: string): string | undefined {
  if (!existsSync(place)) return undefined;
  if (!statSync(place).isDirectory()) return readFileSync(place, 'latin1');
  const files = readdirSync(place).sort();
  return files.map((name) => `${name}\n${readFileSync(join(place, name), 'latin1')}`).join('\n');
}

function sweep(verb: string, typed: readonly string[], hasOld: boolean): void {
  const name = join(folder, 'swept');
  const place = (typed.find((word) => word.startsWith('{}')) ?? '').replace('{}', name);
  const words = typed.map((word) => word.replace('{}', name));
  rmSync(place, { recursive: true, force: true });
  runCommand(words);
  const swept = { verb, words, place, whole: contentOf(place) ?? '', hasOld };
  for (const call of CALLS) {
    for (const code of CODES) {
      // The first call of this kind, the second, and so on until there is none left to fail.
      for (let nth = 1; tryFault(swept, `${call} ${nth} ${code}`); nth += 1);
    }
  }
}

/** Runs a verb to a fault; tells whether it met it. */
function tryFault(swept: Swept, fault: string): boolean {
  const { verb, words, place, whole, hasOld } = swept;
  rmSync(place, { recursive: true, force: true });
  if (hasOld) writeFileSync(place, OLD);
  const ended = runCommand(words, fault);
  runs += 1;
  const now = contentOf(place);
  if (ended.status === 0 && now === whole) return false;
  met += 1;
  const faults = fault.endsWith('KILL') ? [] : wrongEnd(ended);
  if (!isOldOrNew(swept, now)) faults.push('half a file');
  for (const each of faults) {
    wrong.push(`${verb}, ${fault}${hasOld ? ', over an old file' : ''}: ${each}`);
  }
  sweepUp();
  return true;
}

function wrongEnd({ status, err }: Ended): string[] {
  const left = readdirSync(folder).filter((name) => name.startsWith('.reedplate-'));
  return [
    ...(status === 1 ? [] : [`exit code ${status}`]),
    ...(/^reedplate: [^\n]+\n$/u.test(err) ? [] : [`said ${err}`]),
    ...left.map((name) => `left ${name}`),
  ];
}

function isOldOrNew({ verb, whole, hasOld }: Swept, now: string | undefined): boolean {
  if (now === whole) return true;
  if (hasOld) return now === OLD;
  // A study adds to its file; what is there are whole results, and a last line that resuming cuts off.
  return now === undefined || (verb === 'study' && isWhole(now));
}

/** Results of a study are whole where each line is. A kill may leave a last line that resuming cuts off. */
function isWhole(results: string): boolean {
  return results
    .split('\n')
    .slice(0, -1)
    .every((line) => {
      JSON.parse(line);
      return true;
    });
}

/** What a killed process leaves beside the file, it has no chance to take away. */
function sweepUp(): void {
  for (const name of readdirSync(folder)) {
    if (name.startsWith('.reedplate-')) rmSync(join(folder, name), { recursive: true });
  }
}

try {
  for (const [verb, typed] of Object.entries(VERBS)) {
    if (asked.length > 0 && !asked.includes(verb)) continue;
    for (const hasOld of NEW_ONLY.includes(verb) ? [false] : [false, true]) {
      sweep(verb, typed, hasOld);
    }
    console.error(`${verb}: ${runs} runs so far, ${met} met a fault, ${wrong.length} wrong`);
  }
} finally {
  rmSync(folder, { recursive: true });
}
for (const each of wrong) console.error(each);
console.log(
  `${runs} runs of ${asked.length || Object.keys(VERBS).length} kinds, ${met} met a fault, ${wrong.length} wrong`,
);
process.exitCode = wrong.length === 0 ? 0 : 1;
