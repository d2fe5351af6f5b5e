import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeBytes } from '@reedplate/files';
import { afterAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { runWords } from './shared/run-words.fixture.js';

/** Calls that fail with the code given, as a faulty disk makes them. */
const faults = vi.hoisted(() => new Map<string, string>());

vi.mock('node:fs', async (load) => {
  const real = await load<typeof import('node:fs')>();
  const faulty = (name: 'openSync' | 'writeSync' | 'fsyncSync' | 'renameSync') => {
    const act = real[name] as (...given: readonly unknown[]) => unknown;
    return (...given: readonly unknown[]): unknown => {
      const code = faults.get(name);
      if (code !== undefined) throw Object.assign(new Error(code), { code, errno: -1 });
      return act(...given);
    };
  };
  return {
    ...real,
    openSync: faulty('openSync'),
    writeSync: faulty('writeSync'),
    fsyncSync: faulty('fsyncSync'),
    renameSync: faulty('renameSync'),
  };
});

const TAKE = readFileSync(
  new URL('../../../examples/first-blues/take.json', import.meta.url),
  'utf8',
);
const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
const SONG = ['--form', 'quick-change', '--key', 'G'];
const HARP = ['--harp', 'C'];

/** Every verb that writes, as it is typed; `npm run fault-sweep` does the same with whole processes. */
const VERBS: readonly (readonly [string, readonly string[]])[] = [
  ['practice.mid', ['practice', ...SONG, ...HARP, '-o']],
  ['practice.musicxml', ['practice', ...SONG, ...HARP, '-o']],
  ['band.mid', ['backing', ...SONG, '-o']],
  ['take.abc', ['convert', 'take.json', ...SONG, '--quantise', '1/8,1/8t', '--to', 'abc']],
  ['lesson.html', ['handout', ...SONG, ...HARP, '--no-staff', '--no-phrases', '-o']],
  ['harp.svg', ['picture', 'harp', ...HARP, '-o']],
];
const CALLS = ['openSync', 'writeSync', 'fsyncSync', 'renameSync'];
const CODES = ['ENOSPC', 'EACCES', 'EIO'];

const run = (words: readonly string[], file: string) =>
  runWords([...words, join(folder, file)], { readText: () => TAKE, writeBytes });

beforeEach(() => faults.clear());
afterAll(() => rmSync(folder, { recursive: true }));

describe.each(VERBS)('writing %s', (file, words) => {
  test('a fault of the disk keeps the old file, says one line and ends with 1', async () => {
    for (const call of CALLS) {
      for (const code of CODES) {
        writeFileSync(join(folder, file), 'old');
        faults.set(call, code);
        const { code: exit, out, err } = await run(words, file);
        faults.clear();
        expect([exit, out, `${call} ${code}`]).toEqual([1, '', `${call} ${code}`]);
        expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
        expect(readFileSync(join(folder, file), 'utf8')).toBe('old');
        expect(readdirSync(folder)).toEqual([file]);
      }
    }
    expect((await run(words, file)).code).toBe(0);
    expect(readFileSync(join(folder, file), 'utf8')).not.toBe('old');
    rmSync(join(folder, file));
  });
});
