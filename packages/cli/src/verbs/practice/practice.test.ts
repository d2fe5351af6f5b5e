import { readMusicXml } from '@reedplate/interchange';
import { makePlayer, tuningById } from '@reedplate/layout';
import { readLine } from '@reedplate/line';
import { PRACTICE_KINDS } from '@reedplate/practice';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const WORDS = ['practice', '--key', 'G', '--harp', 'C'];

describe('reedplate practice', () => {
  test.each(PRACTICE_KINDS)(
    'reedplate practice --kind %s has a move for every bar',
    async (kind) => {
      const { code, out } = await runWords([...WORDS, '--kind', kind], {});
      expect(code).toBe(0);
      expect(out).toMatch(new RegExp(`^${kind} of Basic twelve-bar in G on the C harp$`, 'mu'));
      for (let bar = 1; bar <= 12; bar += 1) {
        expect(out).toMatch(new RegExp(`^${bar} +(?:I7|IV7|V7) +[GCD]7 +`, 'mu'));
      }
    },
  );

  test('reedplate practice writes places without a tail of figures', async () => {
    const { code, out } = await runWords([...WORDS, '--form', 'I7 IV7 V7 | I7'], {});
    expect(code).toBe(0);
    expect(out).toMatch(/^1:2\.33 +IV7 /mu);
    expect(out).not.toMatch(/\d\.\d{3}/u);
  });

  test('reedplate practice reads a tuning from a JSON file', async () => {
    const tuning = JSON.stringify(tuningById('raised-fifth-draw'));
    const ask = async (word: string) =>
      (
        await runWords([...WORDS, '--kind', 'guide-tones', '--tuning', word], {
          readText: () => tuning,
        })
      ).out;
    expect(await ask('./mine.json')).toBe(await ask('raised-fifth-draw'));
  });

  test('reedplate practice --json holds a line that reads back, and that score takes', async () => {
    const { line } = JSON.parse((await runWords([...WORDS, '--json'], {})).out);
    expect(readLine(line)).toEqual(line);
    const words = ['score', 'line.json', '--key', 'G', '--json'];
    const score = JSON.parse((await runWords(words, { readText: () => JSON.stringify(line) })).out);
    expect(score.measures).toMatchObject({ chordFit: 1, landing: 1, coverage: 1, clashTime: 0 });
  });

  test('reedplate practice writes an exercise with its title, or one that says what it is', async () => {
    const titles: string[] = [];
    const writeBytes = (_: string, bytes: Uint8Array) =>
      void titles.push(`${readMusicXml(bytes).line.title}`);
    const words = [...WORDS, '--kind', 'thirds-and-sevenths', '-o', 'x.musicxml'];
    expect((await runWords(words, { writeBytes })).out).toMatch(
      /^thirds-and-sevenths of Basic twelve-bar in G on the C harp\n[A-Z]/u,
    );
    await runWords([...words, '--title', 'Tuesday'], { writeBytes });
    expect(titles).toEqual(['Thirds and sevenths of Basic twelve-bar in G', 'Tuesday']);
  });

  test('reedplate practice says which chords of an exercise a player has no tone of', async () => {
    const player = makePlayer([{ technique: 'natural', breath: 'blow', holes: [2] }]);
    const { code, err } = await runWords([...WORDS, '--kind', 'thirds', '--player', 'low.json'], {
      readText: () => JSON.stringify(player),
    });
    expect([code, err]).toEqual([
      2,
      'reedplate: "G7, D7" cannot be sounded on this harp: expected chords of which this harp has a tone at this level\n',
    ]);
  });

  test('reedplate practice says where another tone stands in for what was asked', async () => {
    const ask = async (...words: readonly string[]) =>
      (await runWords([...WORDS, ...words], {})).out;
    // F# and C# are bends of a C harp; of B7 it has the root.
    const remark =
      'At this level the harp has no root of F#7, C#7: another tone stands in; see --level.';
    expect(await ask('--key', 'F#', '--level', 'natural')).toContain(remark);
    for (const words of [
      ['--level', 'bends'],
      ['--kind', 'guide-tones'],
      ['--kind', 'chords'],
    ]) {
      expect(await ask('--key', 'F#', ...words)).not.toContain('stands in');
    }
    expect(await ask()).not.toContain('stands in');
    expect(await ask('--form', 'I7 | II5', '--kind', 'guide-tones')).toContain(
      'no third or seventh of A5: another',
    );
  });

  test('reedplate practice names the bar of a chord that the harp has no tone of', async () => {
    // F# A# C#: a C harp has none of them without bending.
    const { code, err } = await runWords(
      [...WORDS, '--form', 'I7 | VII', '--level', 'natural'],
      {},
    );
    expect(code).toBe(2);
    expect(err).toMatch(/F#.*bar 2/u);
  });

  test.each([
    ['a kind', ['--kind', 'third'], /"third" is not one of the choices.*did you mean thirds\?/u],
    ['a level', ['--level', 'expert'], /"expert" is not one of the choices/u],
    ['a level', ['--kind', 'chords', '--level', 'expert'], /"expert" is not one of the choices/u],
    ['a file', ['-o', 'line.docx'], /line\.docx/u],
  ])(
    'reedplate practice refuses %s that does not exist, in one line',
    async (_, words, message) => {
      const { code, out, err } = await runWords([...WORDS, ...words], {});
      expect([code, out]).toEqual([2, '']);
      expect(err).toMatch(message);
      expect(err).toMatch(/^reedplate: [^\n]+\n$/u);
    },
  );
});
