import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeTuning, TUNINGS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { runWords } from './run-words.fixture.js';

/** The standard layout with F# for F in draw 5, as a file of a user's. */
const OWN = makeTuning({
  id: 'ours',
  blow: 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7',
  draw: 'D4 G4 B4 D5 F#5 A5 B5 D6 F6 A6',
});
const LINE = makeLine([
  { start: 0, duration: 960, pitch: 67 },
  { start: 960, duration: 960, pitch: 78 },
]);
const FILES: ReadonlyMap<string, string> = new Map([
  ['ours.json', JSON.stringify(OWN)],
  ['broken.json', '{"id":"broken","blow":"C4","draw":"H4"}'],
  ['take.json', JSON.stringify(LINE)],
  ['take.tab', '+2 -5'],
]);

function run(words: readonly string[]) {
  return runWords(words, {
    readText: (path) => {
      const text = FILES.get(path);
      if (text === undefined) throw new Error(`no file ${path} in this test`);
      return text;
    },
    writeBytes: () => {},
  });
}

/** Studies read their tunes from the disk themselves. */
const TUNES = join(mkdtempSync(join(tmpdir(), 'reedplate-harps-')), 'tunes.ndjson');
writeFileSync(TUNES, `${JSON.stringify({ key: 'G', line: LINE })}\n`);

const HARP = ['--harp', 'C', '--tuning'] as const;
const SONG = ['--key', 'G'] as const;

/** Every verb that takes a tuning, up to the word that names it. */
const VERBS: readonly (readonly string[])[] = [
  ['map', ...HARP],
  ['target', ...SONG, ...HARP],
  ['practice', ...SONG, ...HARP],
  ['score', 'take.json', ...SONG, ...HARP],
  ['path', 'take.json', ...HARP],
  ['scale', ...SONG, ...HARP],
  ['temper', ...HARP],
  ['convert', 'take.tab', 'take.abc', ...HARP],
  ['pick', ...SONG, '--tuning'],
  ['setlist', 'G', 'C', '--tuning'],
  ['retune', '--to'],
  ['retune', '--to', 'standard', '--from'],
  ['tunings'],
  ['fit', 'take.json', '--tunings'],
  ['study', TUNES, '--tunings'],
];

describe.each(VERBS.map((words) => [words.join(' '), words] as const))(
  'reedplate %s',
  (_, words) => {
    test('takes a tuning by the id of the catalogue', async () => {
      expect(await run([...words, 'raised-fifth-draw'])).toMatchObject({ code: 0, err: '' });
    });

    test('takes a tuning from a JSON file', async () => {
      expect(await run([...words, 'ours.json'])).toMatchObject({ code: 0, err: '' });
    });

    test('says which file holds no tuning', async () => {
      const { code, out, err } = await run([...words, 'broken.json']);
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(/^reedplate: "H4" .*hole 1, breath draw, file broken\.json\)[^\n]+\n$/u);
    });

    test('says which tuning was meant', async () => {
      const { code, err } = await run([...words, 'standrad']);
      expect(code).toBe(2);
      expect(err).toContain('did you mean standard?');
    });
  },
);

describe('readHarp', () => {
  const json = async (...words: readonly string[]) =>
    JSON.parse((await run([...words, '--json'])).out);

  test('readHarp gives the reeds of the file', async () => {
    const { notes } = await json('scale', ...HARP, 'ours.json', '--key', 'D', '--scale', 'major');
    const sharp = notes.find(({ name }: { name: string }) => name === 'F#5');
    expect(sharp.soundings).toMatchObject([{ hole: 5, breath: 'draw', technique: 'natural' }]);
  });

  test('readHarp takes the name of a harp, and says a register or a tuning once', async () => {
    const of = (...words: readonly string[]) => json('map', '--harp', ...words);
    expect(await of('low F')).toEqual(await of('F', '--register', 'low'));
    expect(await of('Gm natural-minor')).toEqual(await of('Gm', '--tuning', 'natural-minor'));
    const { code, err } = await run(['map', '--harp', 'low F', '--tuning', 'dorian']);
    expect(code).toBe(2);
    expect(err).toContain('"low F"');
    expect(err).toContain('the key alone in --harp');
    expect((await run(['map', '--harp', 'low H'])).err).toContain('"H" is not a key');
  });

  test('readHarp refuses a register by name', async () => {
    const { err } = await run(['temper', '--harp', 'C', '--register', 'hgih']);
    expect(err).toContain('did you mean high?');
  });
});

describe('readMaybeHarp', () => {
  test('readMaybeHarp gives a take in tab its notes by the tuning of the harp', async () => {
    const words = ['score', 'take.tab', '--key', 'G', '--json', '--harp', 'C'];
    const pitches = async (...more: readonly string[]) =>
      JSON.parse((await run([...words, ...more])).out).notes.map(
        ({ pitch }: { pitch: number }) => pitch,
      );
    expect(await pitches()).toEqual([64, 77]);
    expect(await pitches('--tuning', 'ours.json')).toEqual([64, 78]);
    expect(await pitches('--register', 'low')).toEqual([52, 65]);
  });

  test.each([
    [['--tuning', 'ours.json'], '"ours.json"'],
    [['--register', 'low'], '"low"'],
  ])('readMaybeHarp refuses %j without the key of the harp', async (words, value) => {
    const { code, err } = await run(['score', 'take.json', '--key', 'G', ...words]);
    expect(code).toBe(2);
    expect(err).toContain(value);
    expect(err).toContain('--harp with --tuning and --register');
  });
});

describe('readHarpChoice', () => {
  test.each([
    ['pick', ['pick', '--key', 'G']],
    ['setlist', ['setlist', 'G', 'C']],
  ])('%s --own takes a tuning from a file', async (_, words) => {
    const { code, out } = await run([...words, '--own', 'low C ours.json']);
    expect(code).toBe(0);
    expect(out).toContain('ours');
  });

  test('pick --own says which file holds no tuning', async () => {
    const { err } = await run(['pick', '--key', 'G', '--own', 'C, D broken.json']);
    expect(err).toContain('file broken.json');
  });
});

describe('readTuningList', () => {
  test('fit --tunings takes files and ids together, and all for the catalogue', async () => {
    const harps = async (tunings: string) =>
      JSON.parse(
        (await run(['fit', 'take.json', '--tunings', tunings, '--keys', 'C', '--json'])).out,
      );
    const names = (await harps('standard, ours.json')).harps.map(
      ({ harp }: { harp: string }) => harp,
    );
    expect(names.sort()).toEqual(['C', 'C ours']);
    expect((await harps('all')).considered).toBe(TUNINGS.length);
  });

  test('fit --tunings refuses an empty list', async () => {
    expect((await run(['fit', 'take.json', '--tunings', ', '])).err).toContain('at least one word');
  });
});
