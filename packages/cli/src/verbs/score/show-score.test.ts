import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { makeChart } from '@reedplate/form';
import { type Line, makeLine, readLine, transposeLine } from '@reedplate/line';
import { makeExercise } from '@reedplate/practice';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const TAKE = readLine(
  readFileSync(
    fileURLToPath(new URL('../../../../../examples/first-blues/take.json', import.meta.url)),
    'utf8',
  ),
);
const CHART = makeChart('basic', 'G');
const on = (pitchOf: (root: number) => number): Line =>
  makeLine(
    CHART.spans.map(({ start, chord }) => ({
      start,
      duration: 1900,
      pitch: pitchOf(chord?.tones[0]?.pitchClass ?? 7),
    })),
  );
const ROOTS = on((root) => 60 + root);
const STAYS = on(() => 67);
const later = (line: Line, ticks: number): Line =>
  makeLine(
    line.notes.map((note) => ({ ...note, start: note.start + ticks })),
    {},
  );

async function score(takes: readonly Line[], ...words: readonly string[]): Promise<string> {
  const files = takes.map((_, at) => `${at + 1}.json`);
  const { out } = await runWords(['score', ...files, '--key', 'G', ...words], {
    readText: (path) => JSON.stringify(takes[Number.parseInt(path, 10) - 1]),
  });
  return out;
}

describe('reedplate score --why', () => {
  const quick = ['--form', 'quick-change', '--why'];

  test.each([
    ['on a harp too high', transposeLine(TAKE, 2), 'read as if in a key 2 semitones higher'],
    ['on a harp too low', transposeLine(TAKE, -2), 'read as if in a key 2 semitones lower'],
    ['a bar late', later(TAKE, 3840), 'read as if 1 bar late'],
    ['beats late', later(TAKE, 1920), 'read as if 1 beat late'],
  ])('says by what the same notes would have counted: %s', async (_, take, said) => {
    expect(await score([take], ...quick)).toMatch(
      new RegExp(`^ +\\d+ % of what was lost: ${said}$`, 'mu'),
    );
  });

  test('says of one chord throughout that there is nothing to follow', async () => {
    expect(await score([ROOTS], '--form', '| I7 |', '--why')).toContain(
      '\n  one chord throughout: there is nothing to follow\n',
    );
  });
});

describe('reedplate score', () => {
  test('has no feedback where nothing is to be mended', async () => {
    const made = makeExercise(CHART, 'C', { kind: 'arpeggios-up' });
    if (!made.playable) throw new Error('a C harp has the chords of a blues in G');
    const out = await score([made.line]);
    expect(out).toContain('\n100 of 100 ');
    expect(out).not.toContain('\nfeedback\n');
    // Nor after several takes.
    expect(await score([made.line, made.line])).not.toContain('feedback');
  });

  test('says how many bars of a count-in were taken off', async () => {
    const bars = (count: number) => score([later(ROOTS, count * 3840)], '--count-in', `${count}`);
    expect(await bars(1)).toContain('\nA count-in of 1 bar was taken off.\n');
    expect(await bars(2)).toContain('\nA count-in of 2 bars was taken off.\n');
  });

  test('of several takes says what each gained, and which bars became better or worse', async () => {
    const better = await score([STAYS, ROOTS]);
    expect(better).toMatch(/^2 +100 +\+\d+ +2\.json /mu);
    expect(better).toMatch(/\nThe last take is better in bars [\d, ]+\.\n/u);
    const worse = await score([ROOTS, STAYS]);
    expect(worse).toMatch(/^2 +0 +-\d+ +2\.json /mu);
    expect(worse).toMatch(/\nThe last take is worse in bars [\d, ]+\.\n/u);
    expect(await score([ROOTS, ROOTS])).not.toContain('The last take');
  });

  test('of several takes names each by its file, and by its title where it has one', async () => {
    const out = await score([{ ...ROOTS, title: 'Tuesday' }, ROOTS]);
    expect(out).toMatch(/^1 +100 +1\.json: Tuesday /mu);
    expect(out).toMatch(/^2 +100 +\+0 +2\.json +You/mu);
  });
});
