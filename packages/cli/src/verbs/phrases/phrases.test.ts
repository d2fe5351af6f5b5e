import { makePlayer } from '@reedplate/layout';
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
    const [phrase] = JSON.parse(out);
    expect(phrase.notes.map(({ degree }: { degree: string }) => degree)).toEqual(['1', 'b3', '5']);
  });

  test('says that there is none of what is asked', async () => {
    const { code, out } = await runWords(['phrases', '--kind', 'lick', '--position', '9']);
    expect([code, out]).toEqual([0, '0 phrases\n\nnone\n']);
  });

  test('reads a phrase from tab in second position where none is said, and says what it is', async () => {
    const { out } = await runWords(['phrases', '--from-tab', 'mine.tab'], {
      readText: () => '-2 -3 -4:2',
    });
    expect(out).toBe('from tab: lick, position 2, shuffle, grade 1\n| I7 |\n-2 -3 -4:2\n\n');
  });

  test('lists phrases for minor of a position, and shows each of a list on a harp', async () => {
    const words = ['phrases', '--kind', 'turnaround', '--position', '3', '--mode', 'minor'];
    const { out } = await runWords(words);
    expect(out).toMatch(/^\d+ phrases\n/u);
    expect(out).toContain('turn-minor-five');
    const count = Number.parseInt(out, 10);
    const placed = (await runWords([...words, '--harp', 'C', '--key', 'Dm'])).out;
    expect(placed.match(/^bar 1 on a harp in C, /gmu)).toHaveLength(count);
  });

  test('says how many notes are otherwise, where the chart has no chord, and what is not to be had', async () => {
    const stair = ['phrases', 'stair', '--harp', 'C', '--key', 'G'];
    const natural = await runWords([
      'phrases',
      'third-from-below',
      ...stair.slice(2),
      '--level',
      'natural',
    ]);
    expect(natural.out).toContain('bar 1 on a harp in C, 1 note otherwise than written:');
    const overBreak = await runWords([...stair, '--over', 'I7 | N.C.', '--bar', '2']);
    expect(overBreak.out).toContain('bar 2: made for G7, the chart has no chord');
    const player = JSON.stringify(
      makePlayer([{ technique: 'natural', breath: 'blow', holes: [2] }], { id: 'low' }),
    );
    const low = await runWords([...stair, '--player', 'low.json'], { readText: () => player });
    expect(low.out).toContain('not on this harp: it has no tone of G7 at this level');
  });

  test.each([
    ['a phrase there is not', ['phrases', 'stairs'], 'stair'],
    ['a kind there is not', ['phrases', '--kind', 'turnarond'], 'turnaround'],
    [
      'a key without a harp',
      ['phrases', 'stair', '--key', 'G'],
      '"--key" is not understood by the command: expected --harp',
    ],
    ['a form without a harp', ['phrases', 'stair', '--over', 'basic'], '"--over"'],
    ['a harp without a key', ['phrases', 'stair', '--harp', 'C'], '--key'],
  ])('refuses %s', async (_, words, said) => {
    const { code, err } = await runWords(words);
    expect(code).not.toBe(0);
    expect(err).toContain(said);
  });
});
