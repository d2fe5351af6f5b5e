import { once } from 'node:events';
import { inspect } from 'node:util';
import { Worker } from 'node:worker_threads';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type ErrorDetails, isReedplateError, ReedplateError } from './error.js';
import { ERROR_CODES } from './error-codes.js';

const details: ErrorDetails = { code: 'NOTE_UNKNOWN', value: 'H4', expected: 'a note' };
const messageOf = (more: Partial<ErrorDetails>): string =>
  new ReedplateError({ ...details, ...more }).message;

describe('ReedplateError', () => {
  test('carries code, value, expected, nearest and a frozen place', () => {
    const error = new ReedplateError({ ...details, nearest: 'B4', where: { bar: 2, beat: 3 } });
    expect(error).toMatchObject({ ...details, nearest: 'B4', where: { bar: 2, beat: 3 } });
    expect(Object.isFrozen(error.where)).toBe(true);
    expect(error).toBeInstanceOf(Error);
    expect(error.name).toBe('ReedplateError');
  });

  test('says value, trouble, place, what was expected and the nearest choice', () => {
    expect(messageOf({ nearest: 'B4', where: { bar: 2, beat: 3 } })).toBe(
      '"H4" is not a note name (bar 2, beat 3): expected a note; did you mean B4?',
    );
    expect(messageOf({})).toBe('"H4" is not a note name: expected a note');
  });

  test('names the path of a field and leaves out the index that the path already says', () => {
    expect(messageOf({ where: { path: 'notes[3].start', index: 3 } })).toContain(
      '(notes[3].start):',
    );
    expect(messageOf({ where: { index: 3 } })).toContain('(index 3):');
    expect(messageOf({ where: { file: 'a.tab', line: 2, column: 7 } })).toContain(
      '(file a.tab, line 2, column 7):',
    );
  });

  test('never prints what is missing, no number or an object', () => {
    const said = ' is not a note name: expected a note';
    expect(messageOf({ value: undefined })).toBe(`nothing${said}`);
    expect(messageOf({ value: Number.NaN })).toBe(`a number without a value${said}`);
    expect(messageOf({ value: { hole: 3 } })).toBe(`an object${said}`);
    const cycle: Record<string, unknown> = {};
    cycle.self = cycle;
    expect(messageOf({ value: cycle })).toBe(`an object${said}`);
  });

  test('cuts a long value without splitting a pair of surrogates, and quotes a lone one', () => {
    const cut = messageOf({ value: '🎵'.repeat(1_000_000) });
    expect(cut.length).toBeLessThan(120);
    expect(cut).toMatch(/^"(?:🎵)+…" is not a note name/u);
    expect(messageOf({ value: '\uD800' })).toContain(String.raw`"\ud800"`);
  });
});

describe('the message of a ReedplateError', () => {
  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 400 }),
    fc.string({ maxLength: 2000 }),
    fc.constant('\u0000'.repeat(500)),
  );
  const place = fc.record({ path: text, file: text, bar: fc.integer() }, { requiredKeys: [] });

  test('is at most 300 signs long and holds none that is not seen, whatever it quotes', () => {
    fc.assert(
      fc.property(
        fc.anything(),
        text,
        fc.option(text, { nil: undefined }),
        place,
        (value, expected, nearest, where) => {
          const message = messageOf({ value, expected, nearest, where });
          expect(message.length).toBeLessThanOrEqual(300);
          expect(message).not.toMatch(/[\p{Cc}\u2028\u2029\u202A-\u202E]/u);
        },
      ),
    );
  });

  test('cuts a long list of choices after a word, and keeps the nearest one', () => {
    const expected = `one of ${Array.from({ length: 90 }, (_, at) => `choice-${at}`).join(', ')}`;
    const message = messageOf({ expected, nearest: 'choice-7' });
    expect(message).toMatch(/choice-\d+, …; did you mean choice-7\?$/u);
    expect(new ReedplateError({ ...details, expected }).expected).toBe(expected);
  });

  test('names a choice of 60 signs and a place of 80, and no longer ones whole', () => {
    const [choice, place] = ['c'.repeat(60), `p${'q'.repeat(79)}`];
    expect(messageOf({ nearest: choice })).toContain(`did you mean ${choice}?`);
    expect(messageOf({ nearest: `${choice}c` })).not.toContain('did you mean');
    expect(messageOf({ where: { path: place } })).toContain(`(${place})`);
    expect(messageOf({ where: { path: `o${place}` } })).toContain(`(…${place.slice(1)})`);
  });

  test('begins with the beginning of what was expected, however long that is', () => {
    expect(messageOf({ expected: `one of ${'many '.repeat(100)}` })).toContain(
      'expected one of many',
    );
  });

  test('keeps the end of a long path, which says most, and shows no sign that moves the cursor', () => {
    const path = `${'a'.repeat(200)}.notes[3]`;
    expect(messageOf({ where: { path } })).toMatch(/\(…a+\.notes\[3\]\):/u);
    expect(messageOf({ value: 'a\u001b[2Jb\u0085\u202e' })).toContain(
      String.raw`"a\u001b[2Jb\u0085\u202e" is`,
    );
  });
});

describe('isReedplateError', () => {
  test('knows an error made by another copy of the package', () => {
    const copy = Object.assign(new Error('x'), { name: 'ReedplateError', code: 'KEY_UNKNOWN' });
    expect(isReedplateError(copy)).toBe(true);
    expect(isReedplateError(new ReedplateError(details))).toBe(true);
  });

  test.each([
    [undefined],
    [null],
    ['ReedplateError'],
    [new Error('x')],
    [{ name: 'ReedplateError', code: 'KEY_UNKNOWN' }],
    [Object.assign(new Error('x'), { code: 'KEY_UNKNOWN' })],
    [Object.assign(new Error('x'), { name: 'ReedplateError' })],
    [Object.assign(new Error('x'), { name: 'ReedplateError', code: 'valueOf' })],
    [Object.assign(new Error('x'), { name: 'ReedplateError', code: 3 })],
  ])('refuses %s', (value) => {
    expect(isReedplateError(value)).toBe(false);
  });
});

describe('a ReedplateError that leaves the thread or the program', () => {
  const given: ErrorDetails = { ...details, nearest: 'B4', where: { bar: 2, beat: 3 } };
  const error = new ReedplateError(given);
  const kept = {
    name: 'ReedplateError',
    code: 'NOTE_UNKNOWN',
    message: error.message,
    value: 'H4',
    expected: 'a note',
    nearest: 'B4',
    where: { bar: 2, beat: 3 },
  };

  test('is written whole by JSON.stringify', () => {
    expect(JSON.parse(JSON.stringify(error))).toEqual(kept);
    expect(JSON.parse(JSON.stringify({ failed: [error] }))).toEqual({ failed: [kept] });
  });

  test('has no field for a nearest choice where there is none, as its JSON has none', () => {
    const record = new ReedplateError(details).toJSON();
    expect(Object.keys(record)).not.toContain('nearest');
    expect(JSON.parse(JSON.stringify(record))).toStrictEqual(record);
  });

  test.each<[unknown, unknown]>([
    [undefined, 'nothing'],
    [Number.NaN, 'a number without a value'],
    [null, null],
    [12, 12],
    [{ hole: 3 }, 'an object'],
    [() => 1, 'a function'],
    [10n, 'a bigint'],
    ['a'.repeat(5000), `"${'a'.repeat(59)}…"`],
  ])('is written also with the value %s', (value, written) => {
    const odd = new ReedplateError({ ...details, value });
    expect(JSON.parse(JSON.stringify(odd)).value).toEqual(written);
    expect(odd.value).toBe(value);
  });

  test('is known after structuredClone, and gets its fields back', () => {
    const copy: unknown = structuredClone(error);
    expect(copy).not.toBeInstanceOf(ReedplateError);
    expect(isReedplateError(copy)).toBe(true);
    expect(copy).toMatchObject(kept);
    expect(isReedplateError(copy)).toBe(true);
    expect(isReedplateError(structuredClone(copy))).toBe(true);
  });

  test('has a field for the nearest choice after structuredClone, where there is none too', () => {
    const copy = structuredClone(new ReedplateError(details));
    expect(isReedplateError(copy) && 'nearest' in copy && copy.nearest).toBeUndefined();
  });

  test('can be cloned whatever its value', () => {
    for (const value of [() => 1, Symbol('x'), new WeakMap(), { run: () => 1 }, 10n]) {
      const copy: unknown = structuredClone(new ReedplateError({ ...details, value }));
      expect(isReedplateError(copy) && copy.code).toBe('NOTE_UNKNOWN');
    }
  });

  test('is known on both sides of postMessage between threads', async () => {
    const worker = new Worker(
      `const { parentPort } = require('node:worker_threads');
       parentPort.on('message', (error) => parentPort.postMessage({ error, code: error.cause.code }));`,
      { eval: true },
    );
    try {
      const answered = once(worker, 'message');
      worker.postMessage(error);
      const [back] = (await answered) as [{ readonly error: unknown; readonly code: string }];
      expect(back.code).toBe('NOTE_UNKNOWN');
      expect(isReedplateError(back.error)).toBe(true);
      expect(back.error).toMatchObject(kept);
    } finally {
      await worker.terminate();
    }
  });

  test('is not seen in an error whose cause only looks like one', () => {
    for (const cause of [
      { name: 'ReedplateError', code: 'NO_CODE', message: 'm' },
      { name: 'Error', code: 'NOTE_UNKNOWN', message: 'm' },
    ]) {
      expect(isReedplateError(new Error('m', { cause }))).toBe(false);
    }
  });

  test('is not seen in an error that was caused by one', () => {
    expect(isReedplateError(new Error('outer', { cause: error }))).toBe(false);
    expect(isReedplateError(new Error(error.message, { cause: error }))).toBe(false);
    expect(isReedplateError(new Error('x', { cause: { code: 'NOTE_UNKNOWN' } }))).toBe(false);
  });

  test('prints short, whatever its value', () => {
    const chart = Array.from({ length: 300 }, (_, bar) => ({ bar, chord: 'G7'.repeat(100) }));
    const print = inspect(
      new ReedplateError({ ...given, value: { chart, text: 'x'.repeat(1e5) } }),
    );
    expect(print.length).toBeLessThan(2048);
    expect(print).toContain('an object is not a note name');
    expect(print).toContain("{ code: 'NOTE_UNKNOWN' }");
  });

  test('prints short also where Node prints it as an uncaught error, without our help', () => {
    for (const value of [{ text: 'x'.repeat(1e5) }, 'x'.repeat(1e5), 'x'.repeat(200)]) {
      const print = inspect(new ReedplateError({ ...given, value }), { customInspect: false });
      expect(print.length).toBeLessThan(2048);
    }
  });
});

describe('ERROR_CODES', () => {
  test('are upper-case words, each with a text that follows the value in a message', () => {
    for (const [code, text] of Object.entries(ERROR_CODES)) {
      expect(code).toMatch(/^[A-Z]+(?:_[A-Z]+)*$/);
      expect(text).toMatch(/^[a-z].*[^.]$/);
    }
  });
});
