import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { studyTune } from '../study.js';
import { makeStudySetup } from '../study-setup.js';
import { studyFiles } from './study-files.js';

const folder = mkdtempSync(join(tmpdir(), 'reedplate-study-files-'));
const SETUP = makeStudySetup({ positions: [1, 2] });
let names = 0;

function fileOf(text: string): string {
  names += 1;
  writeFileSync(join(folder, `tunes-${names}.ndjson`), text);
  return join(folder, `tunes-${names}.ndjson`);
}

function newFile(): string {
  names += 1;
  return join(folder, `results-${names}.ndjson`);
}

const tune = (pitch: number) =>
  `${JSON.stringify({ key: 'G', line: { notes: [{ start: 0, duration: 960, pitch }] } })}\n`;
const TUNES = [60, 64, 67, 72].map(tune);
const expected = (tunes: readonly string[]) =>
  tunes.map((text, at) => `${JSON.stringify(studyTune(text, at + 1, SETUP))}\n`).join('');

afterAll(() => rmSync(folder, { recursive: true }));

describe('studyFiles', () => {
  test('studyFiles writes what studyTune says of each tune, in their order', async () => {
    const out = newFile();
    const paths = [fileOf(TUNES.slice(0, 1).join('')), fileOf(TUNES.slice(1).join(''))];
    expect(await studyFiles(paths, SETUP, { out, workers: 1 })).toEqual({ tunes: 4, failures: 0 });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
  });

  test('studyFiles goes on where a file of results ends, and does no more once it is done', async () => {
    const out = newFile();
    const path = fileOf(TUNES.join(''));
    writeFileSync(out, `${expected(TUNES.slice(0, 2))}{"number":3,"mod`);
    const more = await studyFiles([path], SETUP, { out, resume: true });
    expect(more).toEqual({ tunes: 2, failures: 0 });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
    const again = await studyFiles([path], SETUP, { out, resume: true });
    expect(again).toEqual({ tunes: 0, failures: 0 });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
  });

  test('studyFiles begins where there are no results to resume yet', async () => {
    const out = newFile();
    await studyFiles([fileOf(TUNES.join(''))], SETUP, { out, resume: true });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
  });

  test('studyFiles does not write over results, and leaves them as they are', async () => {
    const out = fileOf('mine\n');
    await expect(studyFiles([fileOf(TUNES.join(''))], SETUP, { out })).rejects.toThrow(
      expect.objectContaining({ code: 'USAGE', value: out }),
    );
    expect(readFileSync(out, 'utf8')).toBe('mine\n');
  });

  test('studyFiles tells of tunes that cannot be read, and studies the others', async () => {
    const out = newFile();
    const told: unknown[] = [];
    const watcher = { failed: (failures: readonly unknown[]) => void told.push(...failures) };
    const path = fileOf(`${TUNES[0]}no JSON\n${TUNES[1]}`);
    expect(await studyFiles([path], SETUP, { out, watcher })).toEqual({ tunes: 3, failures: 1 });
    expect(told).toEqual([{ number: 2, message: expect.stringMatching(/JSON/u) }]);
    const numbers = readFileSync(out, 'utf8')
      .trimEnd()
      .split('\n')
      .map((text) => JSON.parse(text).number);
    expect(numbers).toEqual([1, 2, 3]);
  });

  test.each(['', '\n\n', 'no JSON\n', '{}\n'])(
    'studyFiles of %j, in which no tune can be read, says so',
    async (text) => {
      const path = fileOf(text);
      await expect(studyFiles([path], SETUP, { out: newFile() })).rejects.toThrow(
        expect.objectContaining({ code: 'LIST_EMPTY', value: path }),
      );
    },
  );

  test('studyFiles ends with the reason of its signal, whole lines written', async () => {
    const reason = new Error('enough');
    await expect(
      studyFiles([fileOf(TUNES.join(''))], SETUP, { signal: AbortSignal.abort(reason) }),
    ).rejects.toBe(reason);

    const stopped = new AbortController();
    const out = newFile();
    const watcher = { failed: () => stopped.abort(reason) };
    const many = fileOf(TUNES.join('').repeat(3000));
    await expect(studyFiles([many], SETUP, { out, watcher, signal: stopped.signal })).rejects.toBe(
      reason,
    );
    const written = readFileSync(out, 'utf8');
    expect(written.endsWith('\n')).toBe(true);
    const lines = written.trimEnd().split('\n');
    expect(lines.length).toBeLessThan(12_000);
    for (const line of lines) expect(() => JSON.parse(line)).not.toThrow();
  });

  test('studyFiles without a file writes standard output, and ends quietly when its reader goes', async () => {
    const write = vi.spyOn(process.stdout, 'write');
    const gone = Object.assign(new Error('EPIPE'), { code: 'EPIPE' });
    write.mockImplementation(((_: unknown, done: (error?: Error) => void) => {
      done(gone);
      return false;
    }) as typeof process.stdout.write);
    const count = await studyFiles([fileOf(TUNES.join(''))], SETUP);
    write.mockRestore();
    expect(count).toEqual({ tunes: 0, failures: 0 });
  });

  test('studyFiles refuses options that it does not have', async () => {
    await expect(studyFiles(['x'], SETUP, { threads: 2 } as never)).rejects.toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
