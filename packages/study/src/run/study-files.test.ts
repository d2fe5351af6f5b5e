import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { makeEffortModel } from '@reedplate/playability';
import { afterAll, describe, expect, test, vi } from 'vitest';
import { mergeStudyManifests } from '../manifest.js';
import { studyTune } from '../study.js';
import { STUDY_VERSION, studyDigest } from '../study-digest.js';
import { makeStudySetup } from '../study-setup.js';
import { readStudyManifest } from './manifest-file.js';
import type { StudyDone } from './resume.js';
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
    await studyFiles([path], SETUP, { out });
    const whole = readStudyManifest(out);
    writeFileSync(out, `${expected(TUNES.slice(0, 2))}{"number":3,"mod`);
    const told: StudyDone[] = [];
    const watcher = { failed: () => {}, resumed: (done: StudyDone) => void told.push(done) };
    const more = await studyFiles([path], SETUP, { out, resume: true, watcher });
    expect(more).toEqual({ tunes: 2, failures: 0 });
    expect(told).toEqual([{ number: 2, tunes: 2, failures: 0, cut: 16 }]);
    expect(readStudyManifest(out)).toEqual(whole);
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
    const again = await studyFiles([path], SETUP, { out, resume: true });
    expect(again).toEqual({ tunes: 0, failures: 0 });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
  });

  test('studyFiles writes beside its results what they rest on, and leaves no lock', async () => {
    const [out, path] = [newFile(), fileOf(`${TUNES.join('')}no JSON\n`)];
    await studyFiles([path], SETUP, { out, key: 'G' });
    const sha256 = createHash('sha256').update(readFileSync(path)).digest('hex');
    expect(readStudyManifest(out)).toEqual({
      digest: studyDigest(SETUP),
      version: STUDY_VERSION,
      setup: SETUP,
      input: [{ file: basename(path), bytes: readFileSync(path).length, sha256 }],
      asked: { key: 'G' },
      ...{ isComplete: true, tunes: 5, failures: 1 },
    });
    expect(existsSync(`${out}.lock`)).toBe(false);
  });

  test.each([
    ['another setup', [], makeStudySetup({ positions: [1] }), {}, /setup or model/u],
    [
      'other weights under the same id',
      [],
      makeStudySetup({
        positions: [1, 2],
        model: makeEffortModel('beginner', { weights: { bend: 1 } }),
      }),
      {},
      /setup or model/u,
    ],
    ['another input', [tune(71)], undefined, {}, /input was another/u],
    ['another key', [], undefined, { key: 'D' }, /asked for otherwise/u],
    ['another part', [], undefined, { share: { part: 2, of: 2 } }, /asked for otherwise/u],
  ] as const)(
    'studyFiles refuses to resume %s, and leaves all as it is',
    async (_, more, setup, options, message) => {
      const begun = makeStudySetup({
        positions: [1, 2],
        model: makeEffortModel('beginner', { weights: { bend: 2 } }),
      });
      const [out, path] = [newFile(), fileOf(TUNES.join(''))];
      await studyFiles([path], begun, { out });
      const before = readFileSync(out, 'utf8');
      writeFileSync(path, [...TUNES, ...more].join(''));
      await expect(
        studyFiles([path], setup ?? begun, { out, resume: true, ...options }),
      ).rejects.toThrow(message);
      expect(readFileSync(out, 'utf8')).toBe(before);
      expect(existsSync(`${out}.lock`)).toBe(false);
    },
  );

  test('studyFiles resumes no results without a manifest, and nothing that can be read but once', async () => {
    const out = fileOf(expected(TUNES));
    await expect(
      studyFiles([fileOf(TUNES.join(''))], SETUP, { out, resume: true }),
    ).rejects.toThrow(/its manifest/u);
    await expect(studyFiles(['-'], SETUP, { out: newFile(), resume: true })).rejects.toThrow(
      /read but once/u,
    );
  });

  test('studyFiles lets one process write a file, and takes over from one that has ended', async () => {
    const [out, path] = [newFile(), fileOf(TUNES.join(''))];
    writeFileSync(`${out}.lock`, `${process.pid} ${hostname()}\n`);
    await expect(studyFiles([path], SETUP, { out })).rejects.toThrow(/no other study writes/u);
    writeFileSync(`${out}.lock`, `${process.pid} of another host\n`);
    await expect(studyFiles([path], SETUP, { out })).rejects.toThrow(/no other study writes/u);
    expect(existsSync(out)).toBe(false);
    const ended = spawnSync(process.execPath, ['-e', '']).pid;
    writeFileSync(`${out}.lock`, `${ended} ${hostname()}\n`);
    await studyFiles([path], SETUP, { out });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES));
  });

  test('studyFiles in parts gives the lines of the whole, and their manifests merge to its own', async () => {
    const [whole, path] = [newFile(), fileOf(`${TUNES.join('\n')}bad\n`)];
    await studyFiles([path], SETUP, { out: whole });
    const parts = await Promise.all(
      [1, 2, 3].map(async (part) => {
        const out = newFile();
        await studyFiles([path], SETUP, { out, share: { part, of: 3 } });
        return out;
      }),
    );
    const lines = parts.flatMap((out) => readFileSync(out, 'utf8').trimEnd().split('\n'));
    const numberOf = (line: string): number => JSON.parse(line).number;
    lines.sort((a, b) => numberOf(a) - numberOf(b));
    expect(`${lines.join('\n')}\n`).toBe(readFileSync(whole, 'utf8'));
    const manifests = parts.flatMap((out) => readStudyManifest(out) ?? []);
    expect(mergeStudyManifests(manifests)).toEqual(readStudyManifest(whole));
    const [one, two] = manifests;
    if (!one || !two) throw new Error('no manifest');
    for (const some of [
      [one],
      [one, two, two],
      [one, two],
      [one, { ...two, isComplete: false }],
      [one, { ...two, digest: 'x' }],
      [],
    ]) {
      expect(() => mergeStudyManifests(some)).toThrow(
        expect.objectContaining({ code: 'STUDY_INVALID' }),
      );
    }
  });

  test('studyFiles counts on from the tune that is the first of its input', async () => {
    const out = newFile();
    await studyFiles([fileOf(TUNES.slice(2).join(''))], SETUP, { out, first: 3 });
    expect(readFileSync(out, 'utf8')).toBe(expected(TUNES).split('\n').slice(2).join('\n'));
    await expect(studyFiles(['x'], SETUP, { first: 0 })).rejects.toThrow();
  });

  test('studyFiles tells nothing of single lines where no tune is read, and the first of them at the end', async () => {
    const told: unknown[] = [];
    const watcher = { failed: (failures: readonly unknown[]) => void told.push(...failures) };
    const path = fileOf('no tune\n'.repeat(3));
    await expect(studyFiles([path], SETUP, { out: newFile(), watcher })).rejects.toThrow(
      /at least one tune that can be read.*no tune/u,
    );
    expect(told).toEqual([]);
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
