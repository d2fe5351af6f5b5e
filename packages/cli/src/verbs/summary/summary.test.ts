import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import {
  compareCells,
  makeStudySetup,
  readResults,
  studyDigest,
  studyFiles,
  studyTune,
  summariseResults,
  summariseStudy,
} from '@reedplate/study';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';
import { summaryRows } from './rows.js';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'reedplate-summary-'));
const SETUP = makeStudySetup({ positions: [1, 2], levels: ['natural', 'bends'] });

function fileOf(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const found = Array.from({ length: 12 }, (_, number) => {
  const notes = [0, 4, 7, 10, 2].map((up, at) => ({
    start: at * 480,
    duration: 480,
    pitch: 67 + ((up + number) % 12),
  }));
  return studyTune(JSON.stringify({ key: 'G', line: { notes } }), number + 1, SETUP);
});
const studied = found.flatMap((result) => ('cells' in result ? [result] : []));
const failure = studyTune('no tune', 13, SETUP);
const textOf = (results: readonly unknown[]) =>
  results.map((result) => `${JSON.stringify(result)}\n`).join('');
const FILE = fileOf('results.ndjson', textOf([...found, failure]));

describe('reedplate summary', () => {
  test('summary prints a row a cell, with intervals, and what could not be read', async () => {
    const { code, out, err } = await runWords(['summary', FILE]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toMatch(/^12 tunes \(intermediate\); 1 could not be read\n/u);
    await expect(out).toMatchFileSnapshot(`${HERE}golden.txt`);
  });

  test('summary --json prints what the library sums up, as its published schema has it', async () => {
    const report = JSON.parse((await runWords(['summary', FILE, '--seed', '5', '--json'])).out);
    expect(report).toEqual({
      model: 'intermediate',
      digest: studyDigest(SETUP),
      tempos: { tune: 0, setup: 0, default: 12 },
      tunes: 12,
      failures: 1,
      cells: summariseStudy(studied, { seed: 5 }),
    });
    const schema = JSON.parse(readFileSync(`${HERE}../../../schemas/summary.json`, 'utf8'));
    const accepts = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(accepts(report), JSON.stringify(accepts.errors)).toBe(true);
  });

  test('summary --csv prints the same figures, and nothing where there are none', async () => {
    const [head = '', ...rows] = (await runWords(['summary', FILE, '--csv'])).out
      .trimEnd()
      .split('\n');
    const columns = head.split(',');
    expect(columns.slice(0, 7)).toEqual([
      ...['tuning', 'position', 'level', 'tunes'],
      ...['wholeShare', 'wholeShareLow', 'wholeShareHigh'],
    ]);
    const expected = summaryRows(summariseResults(found));
    expect(rows.map((row) => row.split(','))).toEqual(
      expected.map((cell) => columns.map((column) => `${cell[column] ?? ''}`)),
    );
  });

  test('summary has a dash, and an empty cell of CSV, where no tune can be played whole', async () => {
    const low = { notes: [{ start: 0, duration: 480, pitch: 20 }] };
    const path = fileOf(
      'low.ndjson',
      textOf([studyTune(JSON.stringify({ key: 'G', line: low }), 1, SETUP)]),
    );
    const { out } = await runWords(['summary', path]);
    expect(out).toMatch(/^standard +1 +natural +0 % +- +- +-$/mu);
    const [head = '', row = ''] = (await runWords(['summary', path, '--csv'])).out.split('\n');
    expect(head.split(',').slice(4, 10)).toEqual([
      'wholeShare',
      'wholeShareLow',
      'wholeShareHigh',
      'effortPerEvent',
      'effortPerEventLow',
      'effortPerEventHigh',
    ]);
    expect(row.split(',').slice(4, 10)).toEqual(['0', '', '', '', '', '']);
  });

  test('summary of several files is that of all their results', async () => {
    const parts = [found.slice(0, 5), found.slice(5)].map((results, at) =>
      fileOf(`part-${at}.ndjson`, textOf(results)),
    );
    const whole = fileOf('whole.ndjson', textOf(found));
    expect((await runWords(['summary', ...parts, '--json'])).out).toBe(
      (await runWords(['summary', whole, '--json'])).out,
    );
  });

  test('summary compares a tuning, position or level with the others over the same tunes', async () => {
    const { code, out } = await runWords([
      'summary',
      FILE,
      '--against',
      '2',
      '--figure',
      'wholeShare',
    ]);
    expect(code).toBe(0);
    expect(out).toMatch(/^1 - 2 +standard, natural +12 +[^\n]*\([^\n]* to /mu);
    const json = JSON.parse(
      (await runWords(['summary', FILE, '--against', 'bends', '--json'])).out,
    );
    expect(json.comparisons).toEqual(compareCells(studied, { part: 'level', against: 'bends' }));
    const csv = (await runWords(['summary', FILE, '--against', 'bends', '--csv'])).out.split('\n');
    expect(csv[0]).toBe(
      'first,second,where,figure,tunes,families,difference,low,high,effectSize,probability,corrected',
    );
    expect((await runWords(['summary', FILE, '--against', 'none'])).code).toBe(2);
    expect((await runWords(['summary', FILE, '--against', '2', '--figure', 'x'])).code).toBe(2);
  });

  test('summary compares with the results of another model', async () => {
    const texts = [67, 69].map((pitch) => ({
      key: 'G',
      line: { notes: [{ start: 0, duration: 960, pitch }] },
    }));
    const results = ['beginner', 'advanced'].map((model) =>
      fileOf(
        `${model}.ndjson`,
        textOf(
          texts.map((tune, at) =>
            studyTune(JSON.stringify(tune), at + 1, makeStudySetup({ model, positions: [1] })),
          ),
        ),
      ),
    );
    const [first = '', second = ''] = results;
    const { out } = await runWords(['summary', second, '--against', first]);
    expect(out).toMatch(/^advanced - beginner +standard, position 1, bends +2 /mu);
    expect((await runWords(['summary', second, '--against', FILE])).err).toMatch(/same tunes/u);
  });

  test('summary refuses a study that is not finished, doubles and gaps, and takes a part that is asked for as one', async () => {
    const out = join(folder, 'half.ndjson');
    await studyFiles([fileOf('tunes.ndjson', `${tuneIn('G')}\n`.repeat(3))], SETUP, { out });
    const manifest = JSON.parse(readFileSync(`${out}.manifest.json`, 'utf8'));
    writeFileSync(`${out}.manifest.json`, JSON.stringify({ ...manifest, isComplete: false }));
    expect((await runWords(['summary', out])).err).toMatch(/a study that is finished/u);
    expect((await runWords(['summary', out, '--partial'])).code).toBe(0);
    expect((await runWords(['summary', FILE, FILE])).err).toMatch(/each tune once/u);
    const rest = fileOf('rest.ndjson', textOf(found.slice(4)));
    expect((await runWords(['summary', rest])).err).toMatch(/no tune 1 to 4/u);
    expect((await runWords(['summary', rest, '--partial'])).code).toBe(0);
  });

  test.each([
    [['--resamples', '10'], /resamples/u],
    [['--seed', 'x'], /a seed/u],
  ])('summary refuses %j in one line and exits with 2', async (words, message) => {
    const { code, out, err } = await runWords(['summary', FILE, ...words]);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
  });

  test.each([
    ['of another setup', [studyTune(tuneIn('C'), 1, makeStudySetup())], /one setup/u],
    [
      'of another model',
      [studyTune(tuneIn('C'), 1, advanced())],
      /"advanced" .*here intermediate/u,
    ],
    ['that are none', [{ number: 1 }], /line 14/u],
    ['with cells that are none', [{ ...studied[0], cells: [{}] }], /line 14/u],
  ])('summary refuses results %s', async (_, more, message) => {
    const path = fileOf('mixed.ndjson', textOf([...found, failure, ...more]));
    expect((await runWords(['summary', path])).err).toMatch(message);
  });

  test('summary refuses a file without a result, or that is not there', async () => {
    expect((await runWords(['summary', fileOf('empty.ndjson', '')])).err).toMatch(
      /one result or more/u,
    );
    expect((await runWords(['summary', join(folder, 'none')])).err).toMatch(/cannot be read/u);
  });
});

function tuneIn(key: string): string {
  return JSON.stringify({ key, line: { notes: [{ start: 0, duration: 960, pitch: 67 }] } });
}

function advanced() {
  return makeStudySetup({ positions: [1, 2], levels: ['natural', 'bends'], model: 'advanced' });
}

describe('readResults', () => {
  test('readResults gives back what was written, wherever chunks are cut', () => {
    const long = { number: 9, digest: 'd', error: { code: 'X', message: 'ä€𝄞'.repeat(200_000) } };
    const path = fileOf('long.ndjson', textOf([...found, long, failure]).trimEnd());
    expect([...readResults(path)]).toEqual([...found, long, failure]);
  });

  test.each([
    ['a directory', folder, 'it is a directory'],
    ['what is not there', join(folder, 'gone.ndjson'), 'there is no such file'],
  ])('readResults refuses %s, and says why', (_, path, reason) => {
    expect(() => [...readResults(path)]).toThrow(
      expect.objectContaining({
        code: 'FILE_UNREADABLE',
        value: path,
        expected: expect.stringContaining(reason),
      }),
    );
  });

  test.runIf(existsSync('/dev/zero'))(
    'readResults refuses a picture, and a device without end, by what they are',
    () => {
      const png = fileOf('picture.ndjson', '\u0089PNG\r\n\u001a\n\u0000');
      for (const [path, kind] of [
        [png, /^a (?:PNG picture|file of bytes that are no text)$/u],
        ['/dev/zero', /^a file of bytes that are no text$/u],
      ] as const) {
        expect(() => [...readResults(path)]).toThrow(
          expect.objectContaining({
            code: 'FORMAT_UNKNOWN',
            value: expect.stringMatching(kind),
            where: { file: path },
          }),
        );
      }
    },
  );

  test('readResults refuses a line longer than any result', () => {
    const path = fileOf('endless.ndjson', `{"number":1,"x":"${'x'.repeat(17 * 1024 * 1024)}`);
    expect(() => [...readResults(path)]).toThrow(
      expect.objectContaining({ code: 'FILE_TOO_LARGE', value: 'a line' }),
    );
  });

  test('readResults refuses any JSON that is no result, and names its line', () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        const path = fileOf('any.ndjson', `${textOf([failure])}${JSON.stringify(value)}\n`);
        expect(() => [...readResults(path)]).toThrow(
          expect.objectContaining({ code: 'STUDY_INVALID', where: { file: path, line: 2 } }),
        );
      }),
    );
  });
});
