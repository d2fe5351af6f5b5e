import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { makeStudySetup, studyTune } from '@reedplate/playability';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type StudiedBatch, type StudyBatch, studyBatch } from './batch.js';
import { openPool, type StudyPool } from './pool.js';
import { BATCH_SIZE, readBatches } from './read-batches.js';
import { linesDone } from './resume.js';
import { runStudy } from './run-study.js';
import { isReaderGone, openInput, openOutput } from './study-files.js';

const SETUP = makeStudySetup({ positions: [1, 2] });
const folder = mkdtempSync(join(tmpdir(), 'reedplate-'));
let files = 0;

function fileOf(text: string): string {
  files += 1;
  const path = join(folder, `${files}.ndjson`);
  writeFileSync(path, text);
  return path;
}

const tune = (pitch: number) =>
  JSON.stringify({ key: 'G', line: { notes: [{ start: 0, duration: 960, pitch }] } });
const resultLine = (number: number, setup = SETUP) =>
  `${JSON.stringify(studyTune(tune(67), number, setup))}\n`;

async function gather<Item>(items: AsyncIterable<Item>): Promise<Item[]> {
  const found: Item[] = [];
  for await (const item of items) found.push(item);
  return found;
}

describe('readBatches', () => {
  test('readBatches gives every line after the ones done, once, in order, with its number', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.constantFrom('', 'a', 'b c', '{}')),
        fc.nat({ max: 60 }),
        fc.constantFrom('\n', '\r\n'),
        async (lines, done, end) => {
          const text = lines.map((line) => `${line}${end}`).join('');
          const batches = await gather(readBatches(Readable.from([text]), done));
          const numbered = batches.flatMap(({ first, texts }) =>
            texts.map((found, at) => [first + at, found]),
          );
          expect(numbered).toEqual(lines.map((line, at) => [at + 1, line]).slice(done));
          expect(batches.every(({ texts }) => texts.length <= BATCH_SIZE)).toBe(true);
        },
      ),
    );
  });
});

describe('studyBatch', () => {
  test('studyBatch writes a line a tune, passes blank lines over and tells failures by number', () => {
    const task = {
      first: 5,
      texts: [tune(67), '  ', 'bad', tune(71)],
      setup: JSON.stringify(SETUP),
    };
    const { out, tunes, failures } = studyBatch(task);
    const numbers = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).number);
    expect([numbers, tunes]).toEqual([[5, 7, 8], 3]);
    expect(failures).toEqual([{ number: 7, message: expect.stringContaining('JSON') }]);
  });

  test('studyBatch follows a change of setup', () => {
    const cellsFor = (positions: readonly number[]) => {
      const setup = JSON.stringify(makeStudySetup({ positions }));
      return JSON.parse(studyBatch({ first: 1, texts: [tune(67)], setup }).out).cells.length;
    };
    expect([[1], [1, 2, 3], [1]].map(cellsFor)).toEqual([1, 3, 1]);
  });
});

/** A pool whose batches end in any order, and that remembers how many were held at most. */
function slowPool(delays: readonly number[]) {
  let held = 0;
  const seen = { most: 0 };
  const pool: StudyPool = {
    workers: 2,
    study: async ({ first, texts }) => {
      held += 1;
      seen.most = Math.max(seen.most, held);
      await new Promise((done) => setTimeout(done, delays[first % delays.length]));
      held -= 1;
      return { out: `${first}\n`, tunes: texts.length, failures: [] };
    },
    close: async () => {},
  };
  return { pool, seen };
}

async function* batchesOf(count: number): AsyncGenerator<StudyBatch> {
  for (let first = 1; first <= count; first += 1) yield { first, texts: [''] };
}

describe('runStudy', () => {
  test('runStudy gives results in the order of the input, whichever worker is first', async () => {
    const { pool, seen } = slowPool([9, 0, 4, 1, 7]);
    const found = await gather(runStudy(batchesOf(30), SETUP, pool));
    expect(found.map(({ out }) => Number(out))).toEqual(
      Array.from({ length: 30 }, (_, at) => at + 1),
    );
    expect(seen.most).toBeGreaterThan(1);
  });

  test('runStudy holds no more than two batches a worker, however many there are', async () => {
    const { pool, seen } = slowPool([1]);
    for await (const _ of runStudy(batchesOf(50), SETUP, pool)) {
      await new Promise((done) => setTimeout(done, 2));
    }
    expect(seen.most).toBeLessThanOrEqual(4);
  });

  test('runStudy lets a defect in a worker through, in its turn', async () => {
    const pool: StudyPool = {
      workers: 2,
      study: async ({ first }): Promise<StudiedBatch> => {
        if (first === 2) throw new TypeError('a defect');
        return { out: '', tunes: 1, failures: [] };
      },
      close: async () => {},
    };
    await expect(gather(runStudy(batchesOf(5), SETUP, pool))).rejects.toThrow(TypeError);
  });

  test('openPool for one worker studies in this thread', async () => {
    const pool = await openPool(1);
    const [found] = await gather(runStudy(batchesOf(1), SETUP, pool));
    await pool.close();
    expect([pool.workers, found?.tunes]).toEqual([1, 0]);
  });
});

describe('linesDone', () => {
  test('linesDone is 0 for a file that is not there, is empty or holds no whole line', () => {
    expect(linesDone(join(folder, 'none'), SETUP)).toBe(0);
    expect(linesDone(fileOf(''), SETUP)).toBe(0);
    const torn = fileOf('{"number":1,"mod');
    expect(linesDone(torn, SETUP)).toBe(0);
    expect(statSync(torn).size).toBe(0);
  });

  test('linesDone cuts a torn line off wherever it was torn, and nothing else', () => {
    const whole = [1, 2, 4].map((number) => resultLine(number)).join('');
    const next = resultLine(5);
    fc.assert(
      fc.property(fc.nat({ max: next.length - 1 }), (length) => {
        const path = fileOf(whole + next.slice(0, length));
        expect(linesDone(path, SETUP)).toBe(4);
        expect(readFileSync(path, 'utf8')).toBe(whole);
      }),
    );
  });

  test('linesDone reads a last line longer than a chunk', () => {
    const long = `${JSON.stringify({ number: 9, error: { code: 'X', message: 'x'.repeat(200_000) } })}\n`;
    expect(linesDone(fileOf(resultLine(1) + long), SETUP)).toBe(9);
    expect(linesDone(fileOf(`${resultLine(1)}${resultLine(2)}${'x'.repeat(200_000)}`), SETUP)).toBe(
      2,
    );
  });

  test.each([
    ['no JSON\n'],
    ['{}\n'],
    [resultLine(1, makeStudySetup({ positions: [3] }))],
    [resultLine(1, makeStudySetup({ positions: [1, 2], model: 'advanced' }))],
  ])('linesDone refuses results that are not of the study: %j', (text) => {
    expect(() => linesDone(fileOf(text), SETUP)).toThrow(
      expect.objectContaining({ code: 'STUDY_INVALID' }),
    );
  });
});

describe('the files of a study', () => {
  test('openInput refuses what is missing or no file', async () => {
    const failsWith = expect.objectContaining({ code: 'FILE_UNREADABLE' });
    await expect(openInput(join(folder, 'none'))).rejects.toEqual(failsWith);
    await expect(openInput(folder)).rejects.toEqual(failsWith);
  });

  test('openInput tells the size of a file, and how much of it was read', async () => {
    const input = await openInput(fileOf('12345\n'));
    await gather(readBatches(input.stream, 0));
    expect([input.size, input.bytesRead()]).toEqual([6, 6]);
  });

  test('openInput reads a tune book in ABC, a line a tune', async () => {
    const path = join(folder, 'book.abc');
    writeFileSync(path, 'X:1\nT:One\nL:1/4\nK:G\nGABc|]\n\nX:2\nT:Two\nL:1/4\nK:Am\nABcd|]\n');
    const { stream } = await openInput(path);
    const [batch] = await gather(readBatches(stream, 0));
    const setup = JSON.stringify(SETUP);
    const { out, failures } = studyBatch({ first: 1, texts: batch?.texts ?? [], setup });
    const found = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(failures).toEqual([]);
    expect(found.map(({ id, title, cells }) => [id, title, cells[0].harp])).toEqual([
      ['1', 'One', 'G'],
      ['2', 'Two', 'A'],
    ]);
  });

  test('openOutput adds to a file only to resume it', () => {
    const path = fileOf('');
    expect(() => openOutput(path, false)).toThrow(expect.objectContaining({ code: 'USAGE' }));
    openOutput(path, true).destroy();
    expect(openOutput(undefined, false)).toBe(process.stdout);
  });

  test('isReaderGone tells a reader that has gone from other trouble', () => {
    const errorOf = (code: string) => Object.assign(new Error(code), { code });
    expect(['EPIPE', 'ENOSPC'].map((code) => isReaderGone(errorOf(code)))).toEqual([true, false]);
    expect(isReaderGone(new TypeError('x'))).toBe(false);
  });
});
