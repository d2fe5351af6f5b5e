import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writePiece } from '@reedplate/interchange';
import { makeLine } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { studyTune } from '../study.js';
import { studyDigest } from '../study-digest.js';
import { makeStudySetup } from '../study-setup.js';
import { readStudyTune } from '../study-tune.js';
import { type StudiedBatch, type StudyTask, studyBatch } from './batch.js';
import { isReaderGone, openOutput } from './output.js';
import { makePace } from './pace.js';
import { openPool, type StudyPool } from './pool.js';
import { readBatches, type StudyItem } from './read-batches.js';
import { resultsDone } from './resume.js';
import { runStudy, type StudiedLines } from './run-study.js';
import { isInShare, requireShare } from './share.js';
import { makeSlots } from './slots.js';
import { openSources } from './sources.js';
import { type InputPart, type ReadInto, wholeLines } from './whole-lines.js';

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

/** Gives bytes by so many at a time. */
function readerOf(bytes: Buffer, sizes: readonly number[]): ReadInto {
  let at = 0;
  let turn = 0;
  return async (buffer, offset) => {
    const size = sizes[turn++ % sizes.length] ?? 1;
    const read = bytes.copy(buffer, offset, at, Math.min(at + size, bytes.length));
    at += read;
    return read;
  };
}

/** The parts of some bytes, copied, since each is good only until the next. */
async function partsOf(bytes: Buffer, sizes: readonly number[], limits = {}) {
  const parts: (string | ReedplateError)[] = [];
  for await (const part of wholeLines(readerOf(bytes, sizes), limits)) {
    parts.push(part instanceof ReedplateError ? part : part.toString());
  }
  return parts;
}

const sizes = fc.array(fc.integer({ min: 1, max: 40 }), { minLength: 1, maxLength: 5 });
const texts = fc.array(fc.constantFrom('', 'a', 'b c', '{}', 'ä€𝄞', 'x'.repeat(50)));

describe('wholeLines', () => {
  test('wholeLines gives all bytes, in parts that end with a line, however they come', async () => {
    await fc.assert(
      fc.asyncProperty(texts, sizes, fc.boolean(), async (lines, many, isClosed) => {
        const text = lines.join('\n') + (isClosed ? '\n' : '');
        const parts = await partsOf(Buffer.from(text), many, { chunk: 16 });
        const closed = text === '' || text.endsWith('\n') ? text : `${text}\n`;
        expect(parts.join('')).toBe(closed);
        for (const part of parts) expect(part).toMatch(/\n$/u);
      }),
    );
  });

  test('wholeLines tells a line that is too long, and gives all the others', async () => {
    await fc.assert(
      fc.asyncProperty(texts, texts, sizes, fc.boolean(), async (before, after, many, isLast) => {
        const closed = (lines: readonly string[]) => lines.map((line) => `${line}\n`).join('');
        const end = isLast ? '' : `\n${closed(after)}`;
        const bytes = Buffer.from(`${closed(before)}${'y'.repeat(500)}${end}`);
        const parts = await partsOf(bytes, many, { chunk: 16, longest: 200 });
        const at = parts.findIndex((part) => part instanceof ReedplateError);
        expect(parts[at]).toMatchObject({ code: 'FILE_TOO_LARGE' });
        expect(parts.slice(0, at).join('')).toBe(closed(before));
        expect(parts.slice(at + 1).join('')).toBe(isLast ? '' : closed(after));
      }),
    );
  });
});

async function* partOf(text: string): AsyncGenerator<InputPart> {
  if (text !== '') yield Buffer.from(text);
}

const linesOf = (item: StudyItem): readonly (readonly [number, string])[] => {
  if ('error' in item) return [[item.first, item.error.code]];
  const lines = Buffer.from(item.lines).toString().split('\n');
  const tunes = lines.filter((line) => line !== '');
  return tunes.map((line, at) => [item.first + at, line] as const);
};

describe('readBatches', () => {
  test('readBatches gives every tune after the ones done, once, in order, with its number; blank lines count as none', async () => {
    const asked = fc.integer({ min: 1, max: 60 });
    await fc.assert(
      fc.asyncProperty(texts, fc.nat({ max: 60 }), asked, async (lines, done, bytes) => {
        const text = lines.map((line) => `${line}\n`).join('');
        const numbered: (readonly [number, string])[] = [];
        for await (const item of readBatches(partOf(text), done, () => bytes)) {
          numbered.push(...linesOf(item));
          const isLarge = 'lines' in item && item.lines.length > bytes + 60;
          expect(isLarge).toBe(false);
        }
        let tunes = 0;
        const expected = lines.flatMap((line): readonly (readonly [number, string])[] => {
          if (line === '') return [];
          tunes += 1;
          return tunes > done ? [[tunes, line]] : [];
        });
        expect(numbered).toEqual(expected);
      }),
    );
  });

  test('readBatches counts what cannot be read as a line', async () => {
    async function* parts(): AsyncGenerator<InputPart> {
      yield Buffer.from('a\nb\n');
      yield new ReedplateError({ code: 'MIDI_MALFORMED', value: 'x.mid', expected: 'a file' });
      yield Buffer.from('c\n');
    }
    const found: (readonly [number, string])[] = [];
    for await (const item of readBatches(parts(), 0, () => 1)) found.push(...linesOf(item));
    expect(found).toEqual([
      [1, 'a'],
      [2, 'b'],
      [3, 'MIDI_MALFORMED'],
      [4, 'c'],
    ]);
    const rest = await gather(readBatches(parts(), 3, () => 1));
    expect(rest).toHaveLength(1);
  });
});

/** A batch as a worker gets it, with room for so many bytes of results. */
function taskOf(lines: readonly string[], { first = 1, room = 10_000, setup = SETUP } = {}) {
  const bytes = new TextEncoder().encode(lines.map((line) => `${line}\n`).join(''));
  return { first, lines: bytes, room: new Uint8Array(room), setup: JSON.stringify(setup) };
}

function outOf(task: StudyTask): string {
  const { out } = studyBatch(task);
  return typeof out === 'string' ? out : Buffer.from(task.room.subarray(0, out)).toString();
}

const numbersIn = (out: string) =>
  out
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line).number);

describe('studyBatch', () => {
  test('studyBatch writes a line a tune, passes blank lines over and tells failures by number', () => {
    const task = taskOf([tune(67), '  ', 'bad', tune(71)], { first: 5 });
    expect(numbersIn(outOf(task))).toEqual([5, 6, 7]);
    expect(numbersIn(outOf({ ...task, share: { part: 2, of: 2 } }))).toEqual([6]);
    const { tunes, failures, took } = studyBatch(task);
    expect([tunes, took > 0]).toEqual([3, true]);
    expect(failures).toEqual([{ number: 6, message: expect.stringContaining('JSON') }]);
  });

  test('studyBatch gives its results as text where they do not fit the room, and the same', () => {
    const lines = [tune(67), '{"key":"ß"}', tune(71)];
    const { out } = studyBatch(taskOf(lines, { room: 100 }));
    expect(out).toBe(outOf(taskOf(lines)));
    expect(outOf(taskOf(lines))).toContain('ß');
  });

  test('studyBatch reads lines that end as on Windows', () => {
    expect(outOf(taskOf([`${tune(67)}\r`, '\r']))).toBe(outOf(taskOf([tune(67), ''])));
  });

  test('studyBatch reports a bad line wherever it stands, and studies all the others', () => {
    const good = Array.from({ length: 6 }, (_, at) => tune(60 + at));
    fc.assert(
      fc.property(fc.nat({ max: 6 }), fc.string().map(JSON.stringify), (place, bad) => {
        const task = taskOf(good.toSpliced(place, 0, bad));
        const results = outOf(task)
          .trimEnd()
          .split('\n')
          .map((line) => JSON.parse(line));
        const alone = good.map((text, at) => studyTune(text, at < place ? at + 1 : at + 2, SETUP));
        expect(results.toSpliced(place, 1)).toEqual(alone);
        expect(results[place]).toMatchObject({
          number: place + 1,
          error: { code: 'STUDY_INVALID' },
        });
      }),
    );
  });

  test('studyBatch follows a change of setup', () => {
    const cellsFor = (positions: readonly number[]) =>
      JSON.parse(outOf(taskOf([tune(67)], { setup: makeStudySetup({ positions }) }))).cells.length;
    expect([[1], [1, 2, 3], [1]].map(cellsFor)).toEqual([1, 3, 1]);
  });
});

/** A pool whose batches end in any order, and that remembers how many were held at most. */
function slowPool(delays: readonly number[]) {
  let held = 0;
  const seen = { most: 0 };
  const pool: StudyPool = {
    workers: 2,
    study: async ({ first, lines, room }) => {
      held += 1;
      seen.most = Math.max(seen.most, held);
      await new Promise((done) => setTimeout(done, delays[first % delays.length]));
      held -= 1;
      room.set(lines);
      return { out: lines.length, tunes: 1, failures: [], took: 1 };
    },
    close: async () => {},
  };
  return { pool, seen };
}

async function* batchesOf(count: number): AsyncGenerator<StudyItem> {
  // All in the same memory, as those that are read.
  const lines = Buffer.alloc(6);
  for (let first = 1; first <= count; first += 1) {
    lines.write(`${first}\n`.padStart(6, ' '));
    yield { first, lines };
  }
}

const textOf = ({ out }: StudiedLines): string =>
  typeof out === 'string' ? out : Buffer.from(out).toString();

describe('runStudy', () => {
  test('runStudy gives results in the order of the input, whichever worker is first', async () => {
    const delays = fc.array(fc.integer({ min: 0, max: 4 }), { minLength: 1, maxLength: 7 });
    await fc.assert(
      fc.asyncProperty(delays, async (found) => {
        const { pool, seen } = slowPool(found);
        const numbers: number[] = [];
        for await (const done of runStudy(batchesOf(30), SETUP, pool)) {
          numbers.push(Number(textOf(done)));
        }
        expect(numbers).toEqual(Array.from({ length: 30 }, (_, at) => at + 1));
        expect(seen.most).toBeGreaterThan(1);
      }),
      { numRuns: 15 },
    );
  });

  test('runStudy holds no more than three batches a worker, however many there are', async () => {
    const { pool, seen } = slowPool([1]);
    for await (const _ of runStudy(batchesOf(50), SETUP, pool)) {
      await new Promise((done) => setTimeout(done, 2));
    }
    expect(seen.most).toBeLessThanOrEqual(6);
  });

  test('runStudy gives nothing more once its signal is aborted, and waits for no worker', async () => {
    const controller = new AbortController();
    const { pool, seen } = slowPool([1]);
    const numbers: number[] = [];
    const run = async () => {
      for await (const done of runStudy(batchesOf(50), SETUP, pool, controller)) {
        numbers.push(Number(textOf(done)));
        if (numbers.length === 3) controller.abort(new Error('enough'));
      }
    };
    await expect(run()).rejects.toThrow('enough');
    expect(numbers).toEqual([1, 2, 3]);
    expect(seen.most).toBeLessThanOrEqual(6);
    const never: StudyPool = { ...pool, study: () => new Promise<never>(() => {}) };
    const hung = gather(runStudy(batchesOf(50), SETUP, never, { signal: AbortSignal.timeout(5) }));
    await expect(hung).rejects.toMatchObject({ name: 'TimeoutError' });
  });

  test('runStudy takes no batch where its signal was aborted before', async () => {
    const { pool, seen } = slowPool([0]);
    const run = runStudy(batchesOf(5), SETUP, pool, { signal: AbortSignal.abort() });
    await expect(gather(run)).rejects.toMatchObject({ name: 'AbortError' });
    expect(seen.most).toBe(0);
  });

  test('runStudy lets a defect in a worker through, in its turn', async () => {
    const pool: StudyPool = {
      workers: 2,
      study: async ({ first }): Promise<StudiedBatch> => {
        if (first === 2) throw new TypeError('a defect');
        return { out: '', tunes: 1, failures: [], took: 1 };
      },
      close: async () => {},
    };
    await expect(gather(runStudy(batchesOf(5), SETUP, pool))).rejects.toThrow(TypeError);
  });

  test('runStudy says of a line that cannot be read why, in its place', async () => {
    const where = { file: 'of/x.mid' };
    const error = new ReedplateError({
      code: 'MIDI_MALFORMED',
      value: 1,
      expected: 'a file',
      where,
    });
    async function* items(): AsyncGenerator<StudyItem> {
      yield* batchesOf(1);
      yield { first: 2, error };
    }
    const [, failed] = await gather(runStudy(items(), SETUP, slowPool([0]).pool));
    expect(JSON.parse(textOf(failed as StudiedLines))).toEqual({
      number: 2,
      id: 'x.mid',
      digest: DIGEST,
      error: { code: 'MIDI_MALFORMED', message: error.message },
    });
    expect(failed).toMatchObject({ tunes: 1, failures: [{ number: 2, message: error.message }] });
  });

  test('openPool from source studies in this thread', async () => {
    const pool = await openPool(2);
    const [found] = await gather(runStudy(batchesOf(1), SETUP, pool));
    await pool.close();
    expect([pool.workers, found?.tunes]).toEqual([1, 1]);
  });
});

describe('makePace and makeSlots', () => {
  test('makePace gives more after short batches and fewer after long ones, within bounds', () => {
    const pace = makePace();
    const start = pace.bytes();
    pace.note(1);
    expect(pace.bytes()).toBe(2 * start);
    pace.note(20);
    expect(pace.bytes()).toBe(2 * start);
    for (let at = 0; at < 20; at += 1) pace.note(1000);
    const fewest = pace.bytes();
    expect(fewest).toBeGreaterThanOrEqual(1024);
    for (let at = 0; at < 20; at += 1) pace.note(0);
    expect(pace.bytes()).toBeLessThanOrEqual(64 * 1024);
    expect(pace.bytes()).toBeGreaterThan(fewest);
  });

  test('makeSlots hands lines over as they are, in memory used again', () => {
    const slots = makeSlots();
    const lines = fc.uint8Array({ maxLength: 200_000 });
    const seen = new Set<ArrayBufferLike>();
    fc.assert(
      fc.property(lines, (bytes) => {
        const slot = slots.take(bytes);
        expect(slot.lines.subarray(0, bytes.length)).toEqual(bytes);
        seen.add(slot.room.buffer);
        slots.giveBack(slot);
      }),
    );
    expect(seen.size).toBe(1);
  });

  test('makeSlots gives two that are out at once memory of their own', () => {
    const slots = makeSlots();
    const [one, other] = [slots.take(Uint8Array.of(1)), slots.take(Uint8Array.of(2))];
    expect([one.lines[0], other.lines[0]]).toEqual([1, 2]);
    expect(one.room.buffer).not.toBe(other.room.buffer);
  });
});

const DIGEST = studyDigest(SETUP);
const FAILED = `{"number":7,"digest":"${DIGEST}","error":{"code":"X","message":"x"}}\n`;
const numberDone = (text: string) => resultsDone(fileOf(text), DIGEST).number;

describe('resultsDone', () => {
  test('resultsDone counts tunes that could not be read, after others or alone', () => {
    const done = resultsDone(fileOf(`${resultLine(1)}${FAILED}`), DIGEST);
    expect(done).toEqual({ number: 7, tunes: 2, failures: 1, cut: 0 });
    expect(numberDone(FAILED)).toBe(7);
  });

  test('resultsDone is 0 for a file that is empty or holds no whole line', () => {
    expect(numberDone('')).toBe(0);
    const torn = fileOf('{"number":1,"mod');
    expect(resultsDone(torn, DIGEST)).toMatchObject({ number: 0, cut: 16 });
    expect(statSync(torn).size).toBe(0);
  });

  test('resultsDone cuts a torn line off wherever it was torn, says how much, and cuts nothing else', () => {
    const whole = [1, 2, 4].map((number) => resultLine(number)).join('');
    const next = resultLine(5);
    fc.assert(
      fc.property(fc.nat({ max: next.length - 1 }), (length) => {
        const path = fileOf(whole + next.slice(0, length));
        expect(resultsDone(path, DIGEST)).toMatchObject({ number: 4, tunes: 3, cut: length });
        expect(readFileSync(path, 'utf8')).toBe(whole);
      }),
    );
  });

  test('resultsDone reads a last line longer than a chunk', () => {
    const error = { code: 'X', message: 'x'.repeat(200_000) };
    const long = `${JSON.stringify({ number: 9, digest: DIGEST, error })}\n`;
    expect(numberDone(resultLine(1) + long)).toBe(9);
    const torn = `{"number":3,"id":"${'x'.repeat(200_000)}`;
    expect(numberDone(`${resultLine(1)}${resultLine(2)}${torn}`)).toBe(2);
  });

  test.each([
    ['no JSON\n'],
    ['{}\n'],
    [resultLine(1, makeStudySetup({ positions: [3] }))],
    [resultLine(1, makeStudySetup({ positions: [1, 2], model: 'advanced' }))],
    [resultLine(1, makeStudySetup({ positions: [1, 2], octaves: [3] }))],
    [resultLine(1, makeStudySetup({ positions: [1, 2], tempo: 60 }))],
    [`${resultLine(1, makeStudySetup({ positions: [3] }))}${FAILED}`],
    [`${resultLine(2)}${resultLine(1)}`],
    [`${resultLine(2)}${resultLine(2)}`],
    [`no JSON\n${FAILED}`],
    ['notes of mine, with no end of line'],
    [`${resultLine(1)}notes of mine`],
  ])('resultsDone refuses results that are not of the study: %j', (text) => {
    const path = fileOf(text);
    expect(() => resultsDone(path, DIGEST)).toThrow(
      expect.objectContaining({ code: 'STUDY_INVALID' }),
    );
    expect(readFileSync(path, 'utf8')).toBe(text);
  });
});

describe('isInShare', () => {
  test('isInShare gives each tune to one part, and the parts are as large as can be', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 50 }), (of, count) => {
        const sizes = Array.from({ length: of }, () => 0);
        for (let number = 1; number <= count; number += 1) {
          const parts = sizes.flatMap((_, at) =>
            isInShare(number, { part: at + 1, of }) ? [at] : [],
          );
          expect(parts).toHaveLength(1);
          sizes[parts[0] ?? 0] = (sizes[parts[0] ?? 0] ?? 0) + 1;
        }
        expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
      }),
    );
  });

  test.each([{ part: 0, of: 2 }, { part: 3, of: 2 }, { part: 1, of: 0 }, null, '1/2'])(
    'requireShare refuses %j',
    (share) => {
      expect(() => requireShare(share as never)).toThrow(ReedplateError);
    },
  );
});

/** The lines of sources as text, and the codes of what cannot be read. */
async function readAll(paths: readonly string[], options = {}): Promise<readonly string[]> {
  const found: string[] = [];
  for await (const part of openSources(paths, options).parts()) {
    found.push(part instanceof ReedplateError ? part.code : part.toString());
  }
  return found;
}

const ABC = 'X:1\nT:One\nL:1/4\nK:G\nGABc|]\n\nX:2\nT:Two\nL:1/4\nK:Am\nABcd|]\n';
const LINE = makeLine([{ start: 0, duration: 960, pitch: 67 }], { title: 'Take' });

function pieceFile(name: string, bytes: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, bytes);
  return path;
}

describe('openSources', () => {
  test('openSources refuses what is missing or a directory, before it reads anything', () => {
    const failsWith = expect.objectContaining({ code: 'FILE_UNREADABLE' });
    expect(() => openSources([fileOf('x\n'), join(folder, 'none')])).toThrow(failsWith);
    expect(() => openSources([folder])).toThrow(failsWith);
  });

  test('openSources tells the size of all files, and how much of them was read', async () => {
    const input = openSources([fileOf('12345\n'), fileOf('1\n')]);
    expect([input.size, input.bytesRead()]).toEqual([8, 0]);
    await gather(input.parts());
    expect(input.bytesRead()).toBe(8);
  });

  test('openSources reads files one after the other, without byte order marks, each line closed', async () => {
    const files = ['\ufeff{"a":1}', '', 'b\n\ufeffc\n'].map(fileOf);
    expect((await readAll(files)).join('')).toBe('{"a":1}\nb\n\ufeffc\n');
  });

  test('openSources makes tunes of ABC, MIDI and MusicXML, called after their files', async () => {
    const sheet = { line: LINE, key: 'G' } as const;
    const paths = [
      pieceFile('book.abc', ABC),
      pieceFile('take.mid', writePiece(sheet, 'midi') as Uint8Array),
      pieceFile('sheet.musicxml', writePiece(sheet, 'musicxml')),
      fileOf(`${tune(67)}\n`),
    ];
    const tunes = (await readAll(paths))
      .join('')
      .trimEnd()
      .split('\n')
      .map((text) => readStudyTune(text));
    expect(tunes.map(({ id, key }) => [id, key])).toEqual([
      ['book.abc:1', 'G'],
      ['book.abc:2', 'Am'],
      ['take.mid', 'G'],
      ['sheet.musicxml', 'G'],
      [undefined, 'G'],
    ]);
    for (const { line } of tunes.slice(2)) expect(line.notes).toMatchObject(LINE.notes);
  });

  test('openSources takes the part that is asked for, and says where a file has none of it', async () => {
    const low = makeLine([{ start: 0, duration: 960, pitch: 55 }], { title: 'Low' });
    const parts = [
      { name: 'High', line: LINE },
      { name: 'Low', line: low },
    ];
    const path = pieceFile(
      'two.mid',
      writePiece({ line: LINE, parts, key: 'G' }, 'midi') as Uint8Array,
    );
    const [text] = await readAll([path], { part: 'Low' });
    expect(JSON.parse(text ?? '').line.notes[0].pitch).toBe(55);
    expect(await readAll([path], { part: 3 })).toEqual(['OPTION_UNKNOWN']);
  });

  test('openSources gives pieces without a key the key that is asked for', async () => {
    const path = pieceFile('keyless.mid', writePiece({ line: LINE }, 'midi') as Uint8Array);
    const keyOf = async (options: object) => JSON.parse((await readAll([path], options)).join(''));
    expect(await keyOf({})).not.toHaveProperty('key');
    expect(await keyOf({ key: 'Bb' })).toMatchObject({ key: 'Bb' });
  });

  test('openSources reads JSON over several lines as one tune, a list of tunes, or a take', async () => {
    const take = { key: 'G', line: LINE };
    const spread = (name: string, value: unknown) =>
      pieceFile(name, JSON.stringify(value, null, 2));
    const one = await readAll([spread('one.json', { id: 'x', ...take })]);
    expect(one.map((text) => readStudyTune(text).id)).toEqual(['x']);
    const list = (await readAll([spread('list.json', [take, take])])).join('').trimEnd();
    expect(list.split('\n')).toHaveLength(2);
    const [text = ''] = await readAll([spread('take.json', LINE)], { key: 'G' });
    expect(readStudyTune(text)).toMatchObject({
      id: 'take.json',
      key: 'G',
      line: { title: 'Take' },
    });
    expect(await readAll([pieceFile('bad.json', '{\n"a": 1,\n')])).toEqual(['JSON_MALFORMED']);
    const lines = await readAll([pieceFile('lines.json', `${tune(67)}\n${tune(68)}\n`)]);
    expect(lines).toEqual([`${tune(67)}\n${tune(68)}\n`]);
  });

  test('openSources tells a piece that cannot be read, and goes on', async () => {
    const bad = pieceFile('bad.mid', 'MThd and nothing else');
    const [code, next] = await readAll([bad, fileOf('x\n')]);
    expect([code, next]).toEqual(['MIDI_MALFORMED', 'x\n']);
  });
});

describe('openOutput', () => {
  test('openOutput adds to a file only to resume it', async () => {
    const path = fileOf('one\n');
    expect(() => openOutput(path, false)).toThrow(expect.objectContaining({ code: 'USAGE' }));
    const output = openOutput(path, true);
    await output.write('zwei €\n');
    await output.write(new TextEncoder().encode('three\n'));
    output.close();
    expect(readFileSync(path, 'utf8')).toBe('one\nzwei €\nthree\n');
  });

  test('openOutput refuses a file in a folder that is not there', () => {
    expect(() => openOutput(join(folder, 'none', 'x'), false)).toThrow(
      expect.objectContaining({ code: 'FILE_UNWRITABLE' }),
    );
  });

  test('isReaderGone tells a reader that has gone from other trouble', () => {
    const errorOf = (code: string) => Object.assign(new Error(code), { code });
    expect(['EPIPE', 'ENOSPC'].map((code) => isReaderGone(errorOf(code)))).toEqual([true, false]);
    expect(isReaderGone(new TypeError('x'))).toBe(false);
  });
});
