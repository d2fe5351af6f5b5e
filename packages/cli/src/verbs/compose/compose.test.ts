import { readMusicXml } from '@reedplate/interchange';
import { readLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

const WORDS = ['compose', '--form', 'quick-change', '--key', 'G', '--harp', 'C'];

describe('reedplate compose', () => {
  test('reedplate compose prints a line bar by bar, phrase A again from bar 5', async () => {
    const { code, out } = await runWords([...WORDS, '--level', 'natural', '--seed', '3'], {});
    expect(code).toBe(0);
    expect(out).toMatch(/^line over Quick-change twelve-bar in G on the C harp, seed 3$/mu);
    const tabIn = (bar: number) =>
      new RegExp(`^${bar} +A +\\S+ +([-+\\d ]+?)  `, 'mu').exec(out)?.[1];
    expect(tabIn(1)).toMatch(/^[-+]\d/u);
    // The same rhythm, so as many notes; over C7 they may move.
    expect(tabIn(5)?.split(' ').length).toBe(tabIn(1)?.split(' ').length);
    expect(out).toMatch(/^9 +B +D7 /mu);
    expect(out).not.toMatch(/'/u);
  });

  test('reedplate compose names no chord in a break', async () => {
    const words = ['compose', '--form', 'I7 | N.C. | IV7 | I7', '--key', 'G', '--harp', 'C'];
    expect((await runWords(words, {})).out).toMatch(/^2 +A +N\.C\. .*[.]$/mu);
  });

  test('reedplate compose --json holds a line that reads back, the same for the same seed', async () => {
    const ask = async (seed: string) =>
      (await runWords([...WORDS, '--seed', seed, '--json'], {})).out;
    const { line, steps, seed } = JSON.parse(await ask('5'));
    expect(readLine(line)).toEqual(line);
    expect([seed, steps.length]).toEqual([5, line.notes.length]);
    expect(await ask('5')).toBe(await ask('5'));
    expect(await ask('6')).not.toBe(await ask('5'));
  });

  test('reedplate compose -o writes the line with its chords', async () => {
    const files = new Map<string, Uint8Array>();
    const writeBytes = (file: string, bytes: Uint8Array) => void files.set(file, bytes);
    const { code } = await runWords([...WORDS, '-o', 'line.musicxml', '--title', 'Mine'], {
      writeBytes,
    });
    expect(code).toBe(0);
    const piece = readMusicXml(files.get('line.musicxml') ?? new Uint8Array());
    expect(piece.line.title).toBe('Mine');
    expect(piece.line.notes.length).toBeGreaterThan(20);
  });

  test.each([
    [['--plan', 'AABBB'], /a plan in capital letters that divides 12 bars, such as AAB/u],
    [['--fewest', '5', '--most', '3'], /the most notes of a bar/u],
    [['--fewest', '40', '--most', '40'], /density, cells cannot hold together/u],
    [['--last', 'high'], /an ending/u],
    [['--seed', 'x'], /a seed/u],
    [['--level', 'expert'], /a technique level/u],
    [['--effort', 'none'], /points of effort a bar/u],
  ])('reedplate compose %j says what is wrong, and exits with 2', async (words, message) => {
    const { code, err } = await runWords([...WORDS, ...words], {});
    expect(code).toBe(2);
    expect(err).toMatch(message);
  });
});
