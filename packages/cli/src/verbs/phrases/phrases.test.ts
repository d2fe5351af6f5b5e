import { describe, expect, test } from 'vitest';
import { runWords } from '../../shared/run-words.fixture.js';

describe('reedplate phrases', () => {
  test('lists phrases of a kind and grade', async () => {
    const { out, code } = await runWords(['phrases', '--kind', 'turnaround', '--grade', '1']);
    expect(code).toBe(0);
    expect(out).toContain('turn-minor-five');
    expect(out).not.toContain('turn-climb');
  });

  test('shows the tab of one, and puts it on a harp', async () => {
    const { out } = await runWords(
      'phrases stair --harp D --key A --over quick-change --bar 5'.split(' '),
    );
    expect(out).toContain('bar 5 on a harp in D, as written:');
    expect(out).toContain('bar 5: made for A7, the chart has D7');
  });

  test('reads a phrase from tab', async () => {
    const words = [
      'phrases',
      '--from-tab',
      'mine.tab',
      '--position',
      '3',
      '--harmony',
      'i7',
      '--json',
    ];
    const { out } = await runWords(words, { readText: () => '-4 -5 -6:2' });
    const [{ phrase }] = JSON.parse(out);
    expect(phrase.notes.map(({ degree }: { degree: string }) => degree)).toEqual(['1', 'b3', '5']);
  });

  test.each([
    ['a phrase there is not', ['phrases', 'stairs'], 'stair'],
    ['a kind there is not', ['phrases', '--kind', 'turnarond'], 'turnaround'],
    ['a harp without a key', ['phrases', 'stair', '--harp', 'C'], '--key'],
  ])('refuses %s', async (_, words, said) => {
    const { code, err } = await runWords(words);
    expect(code).not.toBe(0);
    expect(err).toContain(said);
  });
});
