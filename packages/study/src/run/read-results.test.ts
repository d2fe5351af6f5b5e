import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { afterAll, describe, expect, test } from 'vitest';
import { studyTune } from '../study.js';
import { makeStudySetup } from '../study-setup.js';
import { readResults } from './read-results.js';

const folder = mkdtempSync(join(tmpdir(), 'reedplate-results-'));
afterAll(() => rmSync(folder, { recursive: true }));

function fileOf(text: string): string {
  writeFileSync(join(folder, 'results.ndjson'), text);
  return join(folder, 'results.ndjson');
}

const setup = makeStudySetup({ positions: [1, 2] });
const tune = '{"key":"C","line":{"notes":[{"start":0,"duration":960,"pitch":64}]}}';
const result = studyTune(tune, 1, setup);
const failure = studyTune('{}', 2, setup);
const textOf = (...values: readonly unknown[]) =>
  values.map((value) => `${JSON.stringify(value)}\n`).join('');

describe('readResults', () => {
  test('readResults gives back what a study wrote, with blank lines and without a last line end', () => {
    const text = `${textOf(result)}\n  \n${textOf(failure)}`;
    expect([...readResults(fileOf(text))]).toEqual([result, failure]);
    expect([...readResults(fileOf(text.trimEnd()))]).toEqual([result, failure]);
    expect([...readResults(fileOf(''))]).toEqual([]);
  });

  test('readResults reads lines and letters that chunks cut', () => {
    const long = { number: 3, digest: 'd', error: { code: 'X', message: 'ä€𝄞'.repeat(100_000) } };
    expect([...readResults(fileOf(textOf(result, long, failure)))]).toEqual([
      result,
      long,
      failure,
    ]);
  });

  test.each([
    ['text that is no JSON', 'no JSON'],
    ['no object', '[1]'],
    ['a tune', tune],
    ['a result without cells', JSON.stringify({ ...result, cells: undefined })],
    ['a result without a number', JSON.stringify({ ...result, number: '1' })],
    ['a result without a model', JSON.stringify({ ...result, model: 1 })],
    ['a result without events', JSON.stringify({ ...result, events: 0 })],
    ['a result whose events are text', JSON.stringify({ ...result, events: '9' })],
    ['a cell that is none', JSON.stringify({ ...result, cells: [null] })],
    ['a cell of no tuning', JSON.stringify({ ...result, cells: [{ level: 'bends' }] })],
    ['a cell of no level', JSON.stringify({ ...result, cells: [{ tuning: 'standard' }] })],
    [
      'a cell without figures',
      JSON.stringify({ ...result, cells: [{ tuning: 'standard', level: 'bends' }] }),
    ],
    ['a result without a digest', JSON.stringify({ ...result, digest: undefined })],
    ['a result without a tempo', JSON.stringify({ ...result, tempo: undefined })],
    ['a failure without a digest', JSON.stringify({ number: 1, error: {} })],
    ['a failure without a number', JSON.stringify({ error: {} })],
    ['a failure without an error', JSON.stringify({ number: 1, error: null })],
  ])('readResults refuses %s, and says in which line it stands', (_, line) => {
    const path = fileOf(`${textOf(result)}${line}\n`);
    const read: unknown[] = [];
    expect(() => {
      for (const each of readResults(path)) read.push(each);
    }).toThrow(expect.objectContaining({ code: 'STUDY_INVALID', where: { file: path, line: 2 } }));
    expect(read).toEqual([result]);
  });

  test('readResults takes any cut of a file for results or a typed error', () => {
    const text = textOf(result, failure);
    fc.assert(
      fc.property(fc.nat({ max: text.length }), (length) => {
        const whole = text.slice(0, length).split('\n').length - 1;
        const read: unknown[] = [];
        try {
          for (const each of readResults(fileOf(text.slice(0, length)))) read.push(each);
        } catch (error) {
          expect(error).toMatchObject({ code: 'STUDY_INVALID' });
        }
        expect(read.slice(0, whole)).toEqual([result, failure].slice(0, whole));
      }),
    );
  });

  test('readResults reads no further than so many bytes', () => {
    const path = fileOf(textOf(result, failure));
    const { length } = Buffer.from(textOf(result));
    expect([...readResults(path, { bytes: length })]).toEqual([result]);
    expect([...readResults(path, { bytes: 0 })]).toEqual([]);
  });

  test('readResults refuses a line longer than any result, and a picture', () => {
    const endless = `{"number":1,"x":"${'x'.repeat(17 * 1024 * 1024)}`;
    expect(() => [...readResults(fileOf(endless))]).toThrow(
      expect.objectContaining({ code: 'FILE_TOO_LARGE' }),
    );
    expect(() => [...readResults(fileOf('GIF89a\u0001'))]).toThrow(
      expect.objectContaining({ code: 'FORMAT_UNKNOWN', value: 'a GIF picture' }),
    );
  });

  test.runIf(existsSync('/dev/zero'))('readResults ends on a device that has no end', () => {
    expect(() => [...readResults('/dev/zero')]).toThrow(
      expect.objectContaining({ code: 'FORMAT_UNKNOWN' }),
    );
  });
});
