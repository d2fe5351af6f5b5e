import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { makePlayer } from '@reedplate/layout';
import { makeEffortModel } from '@reedplate/playability';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const CLI = fileURLToPath(new URL('../../../../reedplate/src/bin.ts', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'reedplate-study-'));
const at = (name: string) => join(folder, name);

/** Tunes that wander up and down a harp, each its own way. */
function tuneOf(number: number, notes: number): string {
  const line = Array.from({ length: notes }, (_, index) => ({
    start: index * 480,
    duration: 480,
    pitch: 72 + Math.round(10 * Math.sin(index * (1 + number / 7))),
  }));
  return JSON.stringify({ id: `t${number}`, key: 'C', line: { tempo: 120, notes: line } });
}

function tunes(name: string, count: number, notes = 60): string {
  const lines = Array.from({ length: count }, (_, index) => tuneOf(index, notes));
  writeFileSync(at(name), `${lines.join('\n')}\n`);
  return at(name);
}

function start(...words: readonly string[]): ChildProcess {
  return spawn(process.execPath, ['--import', 'tsx', CLI, 'study', ...words]);
}

async function finish(child: ChildProcess, input?: string) {
  const written = { out: '', err: '' };
  child.stdout?.on('data', (text) => {
    written.out += text;
  });
  child.stderr?.on('data', (text) => {
    written.err += text;
  });
  child.stdin?.end(input);
  const code = await new Promise<number | null>((resolve) => child.on('close', resolve));
  return { code, ...written };
}

let names = 0;
const newName = (): string => {
  names += 1;
  return `out-${names}.ndjson`;
};

/** Runs a study, in which some tunes may be bad. */
async function studied(words: readonly string[]): Promise<void> {
  expect((await runWords(words)).code).toBeLessThan(2);
}

const linesIn = (path: string) =>
  readFileSync(path, 'utf8')
    .trimEnd()
    .split('\n')
    .map((line) => JSON.parse(line));

/** The results of a study of some text. */
async function resultsOf(text: string) {
  const [tunesPath, out] = [at(newName()), at(newName())];
  writeFileSync(tunesPath, text);
  await studied(['study', tunesPath, '--positions', '1,2', '--out', out]);
  return linesIn(out);
}

const withoutNumber = ({ number: _, ...rest }: Readonly<Record<string, unknown>>) => rest;

describe('reedplate study', { timeout: 120_000 }, () => {
  test('study writes a result for each line, reports bad ones by number, and ends with 1', async () => {
    const input = `${tuneOf(1, 5)}\n{"key":"X"}\n\n${tuneOf(2, 5)}\n`;
    const { code, out, err } = await finish(start('-', '--positions', '1'), input);
    const results = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(code).toBe(1);
    expect(results.map(({ number }) => number)).toEqual([1, 2, 3]);
    expect(results[1]).toMatchObject({ number: 2, error: { code: 'STUDY_INVALID' } });
    expect(err).toMatch(/^reedplate: tune 2: .*\nreedplate: 1 of 3 tunes could not be read/u);
  });

  test('study gives the same from a file, from standard input and into a file', async () => {
    const file = tunes('same.ndjson', 40);
    const fromFile = await finish(start(file));
    const fromInput = await finish(start('-'), readFileSync(file, 'utf8'));
    const intoFile = await finish(start(file, '--out', at('same.out')));
    expect(fromFile).toMatchObject({ code: 0, err: '' });
    expect(fromInput.out).toBe(fromFile.out);
    expect(readFileSync(at('same.out'), 'utf8')).toBe(fromFile.out);
    expect(intoFile.out).toBe('');
  });

  test('study resumes after a kill with nothing lost and nothing twice', async () => {
    const file = tunes('killed.ndjson', 600, 200);
    const words = [file, '--tunings', 'standard,dorian', '--out', at('killed.out')];
    const child = start(...words);
    while (!existsSync(at('killed.out')) || statSync(at('killed.out')).size < 20_000) {
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
    child.kill('SIGKILL');
    await finish(child);
    // As if the kill had come in the middle of a line.
    writeFileSync(at('killed.out'), '{"number":9', { flag: 'a' });
    const before = statSync(at('killed.out')).size;
    expect((await finish(start(...words, '--resume'))).code).toBe(0);
    const whole = await finish(start(file, '--tunings', 'standard,dorian'));
    expect(readFileSync(at('killed.out'), 'utf8')).toBe(whole.out);
    expect(before).toBeLessThan(whole.out.length);
  });

  test('study resumed after a cut at any byte gives what it gives uncut', async () => {
    const lines = Array.from({ length: 12 }, (_, number) => tuneOf(number, 4));
    writeFileSync(at('cut.ndjson'), `${lines.toSpliced(5, 0, 'bad', '').join('\n')}\n`);
    const words = ['study', at('cut.ndjson'), '--positions', '1', '--out', at('cut.out')];
    await studied(words);
    const whole = readFileSync(at('cut.out'));
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: whole.length }), async (length) => {
        writeFileSync(at('cut.out'), whole.subarray(0, length));
        await studied([...words, '--resume']);
        expect(readFileSync(at('cut.out')).equals(whole)).toBe(true);
      }),
      { numRuns: 40 },
    );
  });

  test('study that is resumed when all is done adds nothing', async () => {
    const file = tunes('done.ndjson', 5);
    await finish(start(file, '--out', at('done.out')));
    const before = readFileSync(at('done.out'), 'utf8');
    await finish(start(file, '--out', at('done.out'), '--resume'));
    expect(readFileSync(at('done.out'), 'utf8')).toBe(before);
  });

  const TUNES = Array.from({ length: 5 }, (_, number) => tuneOf(number, 6));

  test.each([
    ['lines that end as on Windows', TUNES.map((text) => `${text}\r\n`).join('')],
    ['a last line that is not closed', TUNES.join('\n')],
    ['a byte order mark', `\ufeff${TUNES.join('\n')}\n`],
  ])('study of %s gives the same', async (_, text) => {
    const plain = await resultsOf(`${TUNES.join('\n')}\n`);
    expect(await resultsOf(text)).toEqual(plain);
    expect(plain).toHaveLength(5);
  });

  test('study passes blank lines over and reports a bad one in any place, the rest as without it', async () => {
    const plain = await resultsOf(`${TUNES.join('\n')}\n`);
    for (let place = 0; place <= TUNES.length; place += 1) {
      const found = await resultsOf(`${TUNES.toSpliced(place, 0, '', '{').join('\n')}\n`);
      expect(found[place]).toMatchObject({ number: place + 1, error: { code: 'JSON_MALFORMED' } });
      expect(found.toSpliced(place, 1).map(withoutNumber)).toEqual(plain.map(withoutNumber));
    }
  });

  test('study takes the same id twice, and gives both results', async () => {
    const twice = await resultsOf(`${tuneOf(1, 5)}\n${tuneOf(1, 5)}\n`);
    expect(twice.map(({ number, id }) => [number, id])).toEqual([
      [1, 't1'],
      [2, 't1'],
    ]);
    expect(twice.map(withoutNumber)[0]).toEqual(twice.map(withoutNumber)[1]);
  });

  test('study reads a line of megabytes, and says why one is too long, and goes on', async () => {
    const huge = JSON.stringify({ ...JSON.parse(tuneOf(1, 5)), note: 'x'.repeat(3_000_000) });
    const tooLong = `"${'x'.repeat(17_000_000)}"`;
    const found = await resultsOf(`${huge}\n${tooLong}\n${tuneOf(2, 5)}\n`);
    expect(found.map(({ id, error }) => error?.code ?? id)).toEqual(['t1', 'FILE_TOO_LARGE', 't2']);
  });

  test.each(['', '\n', '\n\n \n', '{}\n'])('study of %j has no tune and says so', async (text) => {
    writeFileSync(at('nothing.ndjson'), text);
    const { code, err } = await runWords(['study', at('nothing.ndjson'), '--out', at(newName())]);
    expect(code).toBe(2);
    expect(err).toContain('at least one tune that can be read');
  });

  test('study reads ABC, MIDI and lines in one go, numbers them through, and reports a bad file', async () => {
    writeFileSync(at('book.abc'), 'X:1\nL:1/4\nK:G\nGABc|]\n\nX:2\nL:1/4\nK:D\nABcd|]\n');
    writeFileSync(at('bad.mid'), 'MThd and nothing else');
    const files = [at('book.abc'), at('bad.mid'), tunes('some.ndjson', 2, 5)];
    const out = at(newName());
    const { code, err } = await runWords(['study', ...files, '--positions', '1', '--out', out]);
    expect(code).toBe(1);
    expect(err).toMatch(/^reedplate: tune 3: .*bad\.mid/u);
    const ids = linesIn(out).map(({ number, id, error }) => [number, error?.code ?? id]);
    expect(linesIn(out)[2].id).toBe('bad.mid');
    expect(ids).toEqual([
      [1, 'book.abc:1'],
      [2, 'book.abc:2'],
      [3, 'MIDI_MALFORMED'],
      [4, 't0'],
      [5, 't1'],
    ]);
  });

  test('study says once of a file that holds no tune, and exits with 2', async () => {
    writeFileSync(at('prose.txt'), 'Dear reader,\nthis is a letter,\nnot a tune.\n');
    writeFileSync(
      at('spread.json'),
      JSON.stringify({ notes: [{ start: 0, duration: 960, pitch: 67 }] }, null, 2),
    );
    for (const name of ['prose.txt', 'spread.json']) {
      const { code, err } = await runWords(['study', at(name), '--out', at(newName())]);
      expect(code).toBe(2);
      expect(err).toMatch(/^reedplate: [^\n]*at least one tune that can be read[^\n]*\n$/u);
    }
    const words = [
      'study',
      at('spread.json'),
      '--key',
      'G',
      '--positions',
      '1',
      '--out',
      at('spread.out'),
    ];
    expect(await runWords(words)).toMatchObject({ code: 0, err: '' });
    expect(linesIn(at('spread.out'))).toMatchObject([{ number: 1, id: 'spread.json' }]);
  });

  test('study takes a model from a file, a tempo for all tunes, a part of them and their first number', async () => {
    const model = makeEffortModel('beginner', { id: 'mine', weights: { bend: 1 } });
    const readText = () => JSON.stringify(model);
    const out = at(newName());
    const words = [
      'study',
      tunes('parts.ndjson', 5, 6),
      '--positions',
      '1',
      '--model',
      'mine.json',
    ];
    const more = ['--tempo', '60', '--share', '2/2', '--first', '11', '--out', out];
    expect((await runWords([...words, ...more], { readText })).code).toBe(0);
    expect(linesIn(out)).toMatchObject(
      [12, 14].map((number) => ({ number, model: 'mine', tempo: { beats: 60, from: 'setup' } })),
    );
    const { asked, setup } = JSON.parse(readFileSync(`${out}.manifest.json`, 'utf8'));
    expect([asked, setup.model]).toEqual([{ first: 11, share: { part: 2, of: 2 } }, model]);
    const stolen = () => JSON.stringify({ ...model, id: 'advanced' });
    const { code, err } = await runWords(words, { readText: stolen });
    expect([code, err]).toEqual([2, expect.stringMatching(/mine\.json.*id of its own/u)]);
  });

  test('study says that it cut off a line that was not finished', async () => {
    const [file, out] = [tunes('torn.ndjson', 3, 6), at(newName())];
    await studied(['study', file, '--out', out]);
    const whole = readFileSync(out);
    writeFileSync(out, whole.subarray(0, -5));
    const { code, err } = await runWords(['study', file, '--out', out, '--resume']);
    expect([code, err]).toEqual([0, expect.stringMatching(/not finished; all after tune 2/u)]);
    expect(readFileSync(out).equals(whole)).toBe(true);
  });

  test('study stops without a trace where its reader has gone away', async () => {
    const child = start(tunes('gone.ndjson', 400));
    child.stdout?.destroy();
    expect(await finish(child)).toMatchObject({ code: 0, err: '' });
  });

  test.each([
    [[at('none.ndjson')], /cannot be read/u],
    [[tunes('a.ndjson', 1), '--resume'], /--out as well/u],
    [[tunes('b.ndjson', 1), '--out', tunes('c.ndjson', 1)], /not there yet, or --resume/u],
  ])('study refuses %j in one line and exits with 2', async (words, message) => {
    const { code, out, err } = await finish(start(...words));
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(message);
    expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
  });

  test('study takes a player in place of levels, and the key of tunes that say none', async () => {
    const player = at('player.json');
    writeFileSync(player, JSON.stringify(makePlayer(['natural'], { id: 'mine' })));
    const tune = at('keyless.abc');
    writeFileSync(tune, 'X:1\nL:1/4\nK:none\nGABc|\n');
    const words = ['study', tune, '--positions', '2', '--workers', '1', '--key', 'G'];
    const out = at('by-player.ndjson');
    const { code, err } = await runWords([...words, '--player', player, '--out', out], {
      readText: (path) => readFileSync(path, 'utf8'),
    });
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(readFileSync(out, 'utf8')).cells).toMatchObject([
      { position: 2, level: 'mine', harp: 'C' },
    ]);
  });

  test('study refuses --resume without a file to go on in', async () => {
    const { code, err } = await runWords(['study', 'x.ndjson', '--resume']);
    expect([code, err]).toEqual([
      2,
      'reedplate: "--resume" is not understood by the command: expected --out as well\n',
    ]);
  });

  test.each([
    [['--tunings', 'standrad'], /did you mean standard\?/u],
    [['--positions', '13'], /a position/u],
    [['--positions', 'two'], /a position/u],
    [['--levels', 'bend'], /did you mean bends\?/u],
    [['--octaves', '0.5'], /octaves/u],
    [['--workers', '0'], /a number of workers/u],
    [['--share', '3'], /such as 2\/4/u],
    [['--share', '3/2'], /a part/u],
    [['--first', '0'], /the first tune/u],
    [['--tempo', '0'], /felt beats/u],
    [['--model', 'begginer'], /did you mean beginner\?/u],
  ])('study refuses %j before it reads anything', async (words, message) => {
    const { code, err } = await runWords(['study', 'x.ndjson', ...words]);
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
