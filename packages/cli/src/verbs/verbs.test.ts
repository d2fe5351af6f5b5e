import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { runWords } from '../shared/run-words.fixture.js';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const TAKE = readFileSync(`${HERE}../../../../examples/first-blues/take.json`, 'utf8');
const SONG = ['--form', 'quick-change', '--key', 'G'];
const HARP = ['--harp', 'C'];

/** What each verb is typed with; its print is kept in `golden.txt` of its folder, rewritten by `vitest -u`. */
const TYPED: Readonly<Record<string, readonly string[]>> = {
  pick: ['pick', '--key', 'G'],
  map: ['map', ...HARP, '--position', '2'],
  chart: ['chart', ...SONG],
  target: ['target', ...SONG, ...HARP],
  practice: ['practice', ...SONG, ...HARP, '--kind', 'chords'],
  phrases: ['phrases', 'stair', '--harp', 'D', '--key', 'A', '--over', 'quick-change'],
  lesson: ['lesson', ...SONG, '--level', 'natural'],
  score: ['score', 'take.json', ...SONG, ...HARP],
  path: ['path', 'take.json', ...HARP, '--level', 'overbends'],
  fit: ['fit', 'take.json', '--tunings', 'standard,raised-fifth-draw'],
  setlist: ['setlist', 'G', 'C', 'Am', 'E', '--own', 'C,D,A,low F'],
  scale: ['scale', ...HARP, '--position', '3', '--scale', 'dorian'],
  forms: ['forms', '--mode', 'minor'],
  recognise: ['recognise', 'G7 | C7 | G7 | % | C7 | Cm7 | G7 | % | D7 | C7 | G7 | D9'],
  tunings: ['tunings', 'natural-minor'],
  retune: ['retune', '--to', 'lowered-second-and-third-draw', ...HARP],
  temper: ['temper', ...HARP, '--temperament', 'seven-limit', '--holes', '1,2,3,4'],
};

/** Fields that an answer may do without. */
const OPTIONAL: ReadonlySet<string> = new Set(['tempo', 'intro', 'aliases']);

const run = (words: readonly string[]) => runWords(words, { readText: () => TAKE, width: 80 });

describe.each(Object.entries(TYPED))('reedplate %s', (verb, words) => {
  test('prints what its golden file holds', async () => {
    const { code, out, err } = await run(words);
    expect([code, err]).toEqual([0, '']);
    await expect(out).toMatchFileSnapshot(`${HERE}${verb}/golden.txt`);
  });

  test('with --json prints what its published schema accepts, and nothing less', async () => {
    const schema = JSON.parse(readFileSync(`${HERE}../../schemas/${verb}.json`, 'utf8'));
    const accepts = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    const answer = JSON.parse((await run([...words, '--json'])).out);
    expect(accepts(answer), JSON.stringify(accepts.errors)).toBe(true);
    const [whole, wrap] = Array.isArray(answer)
      ? [answer[0], (one: unknown) => [one]]
      : [answer, (one: unknown) => one];
    for (const field of Object.keys(whole).filter((name) => !OPTIONAL.has(name))) {
      const { [field]: _, ...less } = whole;
      expect(accepts(wrap(less)), `without ${field}`).toBe(false);
    }
  });
});
