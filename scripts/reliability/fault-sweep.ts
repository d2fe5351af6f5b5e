import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ROOT } from '../lib/root.mjs';
import { buildCommand } from './faults/build-command.js';

// Every verb that writes, run to every call that changes a disk, which fails with a full disk, without permission,
// with a fault of the disk, or at which the process is killed; over an old file and where there is none.
// Afterwards the old or the new file must be there, never half of one, and the fault be said in one line.
//   npm run fault-sweep
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
  backing: ['backing', ...SONG, '-o', '{}.mid'],
  convert: ['convert', TAKE, '{}.abc', ...SONG, '--quantise', '1/8,1/8t'],
  handout: ['handout', ...SONG, ...HARP, '-o', '{}.html'],
  picture: ['picture', 'harp', ...HARP, '-o', '{}.svg'],
  study: ['study', TUNES, '--workers', '1', '--out', '{}.ndjson'],
};
const CALLS = ['openSync', 'writeSync', 'fsyncSync', 'renameSync', 'closeSync'] as const;
const CODES = ['ENOSPC', 'EACCES', 'EIO', 'KILL'] as const;
const OLD = 'what was there before\n';

interface Ended {
  readonly status: number | null;
  readonly err: string;
}

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

/** A verb with the file that it writes, and what it writes there where nothing fails. */
interface Swept {
  readonly verb: string;
  readonly words: readonly string[];
  readonly file: string;
  readonly whole: Buffer;
  readonly hasOld: boolean;
}

function sweep(verb: string, typed: readonly string[], hasOld: boolean): void {
  const place = join(folder, 'swept');
  const file = (typed.find((word) => word.startsWith('{}')) ?? '').replace('{}', place);
  const words = typed.map((word) => word.replace('{}', place));
  rmSync(file, { force: true });
  runCommand(words);
  const swept = { verb, words, file, whole: readFileSync(file), hasOld };
  for (const call of CALLS) for (const code of CODES) tryFault(swept, call, code);
}

function tryFault(swept: Swept, call: string, code: string): void {
  const { verb, words, file, whole, hasOld } = swept;
  rmSync(file, { force: true });
  if (hasOld) writeFileSync(file, OLD);
  const ended = runCommand(words, `${call} 1 ${code}`);
  runs += 1;
  const now = existsSync(file) ? readFileSync(file) : undefined;
  // The call may not come in this verb; then nothing has failed.
  if (ended.status === 0 && now?.equals(whole)) return;
  met += 1;
  const faults = code === 'KILL' ? [] : wrongEnd(ended);
  if (!isOldOrNew(swept, now)) faults.push('half a file');
  for (const fault of faults) {
    wrong.push(`${verb}, ${call} ${code}${hasOld ? ', over an old file' : ''}: ${fault}`);
  }
  sweepUp();
}

function wrongEnd({ status, err }: Ended): string[] {
  const left = readdirSync(folder).filter((name) => name.startsWith('.reedplate-'));
  return [
    ...(status === 1 ? [] : [`exit code ${status}`]),
    ...(/^reedplate: [^\n]+\n$/u.test(err) ? [] : [`said ${err}`]),
    ...left.map((name) => `left ${name}`),
  ];
}

function isOldOrNew({ verb, whole, hasOld }: Swept, now: Buffer | undefined): boolean {
  if (now?.equals(whole)) return true;
  if (hasOld) return now?.toString() === OLD;
  // A study adds to its file; what is there are whole results, and a last line that resuming cuts off.
  return now === undefined || (verb === 'study' && isWhole(now));
}

/** Results of a study are whole where each line is. A kill may leave a last line that resuming cuts off. */
function isWhole(results: Buffer): boolean {
  return results
    .toString()
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
    if (name.startsWith('.reedplate-')) rmSync(join(folder, name));
  }
}

try {
  for (const [verb, typed] of Object.entries(VERBS)) {
    // A study refuses a file that is there, so it has none to lose.
    for (const hasOld of verb === 'study' ? [false] : [false, true]) sweep(verb, typed, hasOld);
  }
} finally {
  rmSync(folder, { recursive: true });
}
for (const each of wrong) console.error(each);
console.log(
  `${runs} runs of ${Object.keys(VERBS).length} kinds, ${met} met a fault, ${wrong.length} wrong`,
);
process.exitCode = wrong.length === 0 ? 0 : 1;
