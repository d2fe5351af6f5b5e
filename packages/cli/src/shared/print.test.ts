import { describe, expect, test } from 'vitest';
import { inkOfNumeral } from './print.js';
import { runWords } from './run-words.fixture.js';

describe('inkOfNumeral', () => {
  test.each([
    ['I7', 'one'],
    ['i', 'one'],
    ['IV7', 'four'],
    ['iv7', 'four'],
    ['V', 'five'],
    ['v7', 'five'],
    ['ii7', undefined],
    ['iii', undefined],
    ['VI7', undefined],
    ['VII', undefined],
    ['bVI7', undefined],
    ['V7/ii', undefined],
    [null, undefined],
  ])('inkOfNumeral of %s is %s', (numeral, ink) => {
    expect(inkOfNumeral(numeral)).toBe(ink);
  });
});

describe('printAnswer', () => {
  test('printAnswer colours only where the terminal shows colour, and says the same', async () => {
    const words = ['chart', '--key', 'G'];
    const plain = (await runWords(words)).out;
    const coloured = (await runWords(words, { colour: true })).out;
    expect(plain).not.toContain('\u001b');
    expect(coloured).toContain('\u001b[32mI7\u001b[0m');
    // biome-ignore lint/suspicious/noControlCharactersInRegex: colour is made of them
    expect(coloured.replaceAll(/\u001b\[[\d;]*m/gu, '')).toBe(plain);
  });

  test('printAnswer never colours JSON', async () => {
    expect((await runWords(['chart', '--key', 'G', '--json'], { colour: true })).out).not.toContain(
      '\u001b',
    );
  });
});
