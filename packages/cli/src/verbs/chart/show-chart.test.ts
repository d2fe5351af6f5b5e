import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import type { Page, Paint } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { showChart } from './show-chart.js';

const plain: Paint = (_, text) => text;
const marked: Paint = (ink, text) => `<${ink}:${text}>`;
const pageOf = (paint: Paint, width = 80): Page => ({ paint, width, table: () => [] });
const shown = (form: string, paint = plain, key: 'C' | 'G' = 'C') =>
  showChart(makeChart(parseForm(form), key), pageOf(paint));

describe('showChart', () => {
  test('showChart sets four bars a line, numerals over chord names, in columns', () => {
    expect(shown('I7 | IV7 | I7 | V7 | bVI7 | V7').slice(1)).toEqual([
      '',
      '1  | I7    | IV7  | I7  | V7',
      '   | C7    | F7   | C7  | G7',
      '',
      '5  | bVI7  | V7',
      '   | Ab7   | G7',
    ]);
  });

  test('showChart heads it with form, key, metre and feel', () => {
    const chart = makeChart('slow-ninths', 'A');
    expect(showChart(chart, pageOf(plain))[0]).toBe('Slow twelve-bar in ninths in A, 12/8, slow');
  });

  test('showChart has two bars a line where four do not fit, and one where two do not', () => {
    const chart = makeChart(parseForm('bVI7 V7 | bVI7 V7 | bVI7 V7 | I7'), 'C');
    const numeralsAt = (width: number) =>
      showChart(chart, pageOf(plain, width)).filter((line) => /^\d/u.test(line));
    expect(numeralsAt(41)).toHaveLength(1);
    expect(numeralsAt(30)).toEqual(['1  | bVI7 V7  | bVI7 V7', '3  | bVI7 V7  | I7']);
    expect(numeralsAt(20)).toHaveLength(4);
  });

  test('showChart has one bar a line where not even that fits, so that no chord is lost', () => {
    const chart = makeChart(parseForm('bVI7 V7 | I7'), 'C');
    const lines = showChart(chart, pageOf(plain, 10));
    expect(lines.slice(1)).toEqual(['', '1  | bVI7 V7', '   | Ab7 G7', '', '2  | I7', '   | C7']);
  });

  test('showChart names neither chorus where there is one alone', () => {
    expect(shown('I7 | V7').join('\n')).not.toContain('chorus');
  });

  test('showChart begins each chorus on a line of its own, numbered through', () => {
    const chart = makeChart(parseForm('I7 | IV7 | V7'), 'G', { choruses: 2 });
    const lines = showChart(chart, pageOf(plain));
    expect(lines.filter((line) => line.startsWith('chorus'))).toEqual(['chorus 1', 'chorus 2']);
    expect(lines.filter((line) => /^\d/u.test(line)).map((line) => line[0])).toEqual(['1', '4']);
  });

  test.each([
    ['I7 V7', '| I7 V7'],
    ['I7 / / V7', '| I7 / / V7'],
    ['I7 V7 / /', '| I7 V7 / /'],
    ['I7 IV7 / V7', '| I7 IV7 / V7'],
    ['I7 / N.C. /', '| I7 N.C.'],
  ])('showChart of %j writes %j', (bar, expected) => {
    expect(shown(bar)[2]).toBe(`1  ${expected}`);
  });

  test('showChart paints I, IV and V in inks of their own, whatever is added, and no other', () => {
    const [, , numerals] = shown('I7 | IV9 | v7 | bVI7', marked);
    expect(numerals).toContain('<one:I7>');
    expect(numerals).toContain('<four:IV9>');
    expect(numerals).toContain('<five:v7>');
    expect(numerals).toMatch(/\| bVI7$/u);
  });

  test('showChart painted says the same as without paint', () => {
    for (const form of ['I7 V7 | V7 I7 | IV7 iv7', 'V7/V V7 | N.C. I7', 'I7 / / V7 | i7']) {
      const bare = shown(form, marked).map((line) => line.replaceAll(/<[a-z]+:([^>]*)>/gu, '$1'));
      expect(bare).toEqual(shown(form));
    }
  });
});

describe('sayHarp', () => {
  test.each([
    [makeHarp('C'), 'C harp'],
    [makeHarp('F', { register: 'low' }), 'low F harp'],
    [makeHarp('Am', { tuning: 'natural-minor' }), 'Am harp (natural-minor)'],
    [makeHarp('C', { tuning: 'dorian', register: 'high' }), 'high Cm harp (dorian)'],
  ])('sayHarp says a harp as it is asked for', (harp, words) => {
    expect(sayHarp(harp)).toBe(words);
  });
});
