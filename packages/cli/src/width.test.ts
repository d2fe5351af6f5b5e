import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { FORMS } from '@reedplate/form';
import { TUNINGS } from '@reedplate/layout';
import { TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { RECORDING } from './shared/recording.fixture.js';
import { runWords } from './shared/run-words.fixture.js';
import { widthOf } from './shared/wrap.js';
import { VERBS } from './verb-table.js';

const TAKE = readFileSync(
  fileURLToPath(new URL('../../../examples/first-blues/take.json', import.meta.url)),
  'utf8',
);

const keys = fc.constantFrom(...TWELVE_KEYS.map(({ tonic }) => tonic));
const tunings = fc.constantFrom(...TUNINGS.map(({ id }) => id));
const levels = fc.constantFrom('natural', 'bends', 'overbends');
const songs = fc
  .tuple(fc.constantFrom(...FORMS.map(({ id }) => id)), keys, fc.integer({ min: 1, max: 3 }))
  .map(([form, key, choruses]) => ['--form', form, '--key', key, '--choruses', `${choruses}`]);
const harps = fc
  .tuple(keys, tunings)
  .map(([key, tuning]) => ['--harp', key, '--tuning', tuning] as const);
const withSong = (verb: string, ...more: readonly string[]) =>
  fc.tuple(songs, harps).map(([song, harp]) => [verb, ...song, ...harp, ...more]);

/** Words of every verb that prints an answer, of many kinds. */
const WORDS: ReadonlyMap<string, fc.Arbitrary<readonly string[]>> = new Map<
  string,
  fc.Arbitrary<readonly string[]>
>([
  ['pick', fc.tuple(songs, levels).map(([song, level]) => ['pick', ...song, '--level', level])],
  ['setlist', fc.array(keys, { minLength: 1, maxLength: 6 }).map((all) => ['setlist', ...all])],
  ['map', fc.tuple(harps, keys).map(([harp, key]) => ['map', ...harp, '--key', key])],
  ['scale', fc.tuple(harps, keys).map(([harp, key]) => ['scale', ...harp, '--key', key])],
  ['chart', songs.map((song) => ['chart', ...song])],
  ['forms', fc.constantFrom([], ['quick-change'], ['--endings']).map((w) => ['forms', ...w])],
  [
    'recognise',
    fc
      .array(fc.constantFrom('G7', 'C7', 'D7 C7', 'Ebmaj7#11 Abm7b5', '%'), {
        minLength: 2,
        maxLength: 14,
      })
      .map((bars) => ['recognise', ['G7', ...bars].join(' | ')]),
  ],
  ['target', withSong('target', '--shapes', '--level', 'overbends')],
  ['practice', withSong('practice', '--kind', 'guide-tones', '--level', 'overbends')],
  [
    'phrases',
    fc.tuple(keys, keys, levels).map(([key, harp, level]) => {
      const where = ['--harp', harp, '--key', key, '--level', level];
      return ['phrases', 'stair-chorus', 'turn-climb', ...where];
    }),
  ],
  ['lesson', keys.map((key) => ['lesson', '--key', key, '--level', 'natural'])],
  ['compose', withSong('compose', '--level', 'overbends')],
  ['backing', songs.map((song) => ['backing', ...song, '-o', 'band.mid'])],
  ['score', keys.map((key) => ['score', 'take.json', '--key', key, '--harp', 'C', '--notes'])],
  ['listen', harps.map((harp) => ['listen', 'take.wav', ...harp])],
  ['path', harps.map((harp) => ['path', 'take.json', ...harp, '--level', 'overbends'])],
  ['fit', tunings.map((tuning) => ['fit', 'take.json', '--tunings', tuning])],
  ['convert', fc.constant(['convert', 'take.json', 'take.mid'])],
  ['tunings', fc.array(tunings, { maxLength: 3 }).map((all) => ['tunings', ...all])],
  ['retune', tunings.map((tuning) => ['retune', '--from', tuning, '--to', tuning])],
  ['temper', harps.map((harp) => ['temper', ...harp, '--holes', '1,2,3,4'])],
]);

/** Verbs of studies, which read the disk themselves, and those that write a picture or a page. */
const OTHERS: ReadonlySet<string> = new Set(['study', 'summary', 'adapt', 'picture', 'handout']);

const parts = {
  readText: () => TAKE,
  readBytes: (path: string) => (path === 'take.wav' ? RECORDING : new TextEncoder().encode(TAKE)),
  writeBytes: () => {},
};

describe('the width of the print', () => {
  test('every verb is tried here, but for studies and what is drawn', () => {
    const names = VERBS.map(({ name }) => name);
    expect(names.filter((name) => !WORDS.has(name) && !OTHERS.has(name))).toEqual([]);
  });

  test.each([...WORDS])('no line of %s is wider than the screen', async (_, words) => {
    await fc.assert(
      fc.asyncProperty(words, fc.integer({ min: 40, max: 200 }), async (typed, width) => {
        const { out, code, err } = await runWords(typed, { ...parts, width });
        // Some harps have no way to play some songs, and say so on standard error.
        expect([0, 2], err).toContain(code);
        for (const line of out.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(width);
      }),
      { numRuns: 5 },
    );
  });

  test.each(VERBS.map(({ name }) => name))(
    'no line of the help of %s is wider than the screen, examples aside, which are to be copied',
    async (verb) => {
      for (const width of [40, 60, 80, 132]) {
        const { out } = await runWords([verb, '--help'], { width });
        for (const line of out.split('\n').filter((text) => !text.startsWith('  reedplate ')))
          expect(widthOf(line), line).toBeLessThanOrEqual(width);
      }
    },
  );
});
