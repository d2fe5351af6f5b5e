import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { PRACTICE_CAUTIONS, PRACTICE_KINDS, practiceLine } from '@reedplate/practice';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { THEME_IDS } from '../theme/themes.js';
import { handoutPage } from './handout-page.js';

const chart = makeChart('quick-change', 'G', { tempo: 96 });
const harp = makeHarp('C');

const { line: chords, steps: moves } = practiceLine(chart, harp, { kind: 'chords' });

function lesson(): string {
  const line = chords;
  const soundings = moves.map((step) => step.soundings);
  return handoutPage(chart, harp, { lines: [{ title: 'Chords', line, soundings }] });
}

describe('handoutPage', () => {
  it('handoutPage has title, facts, chart, a harp a chord, lines in rows of four bars, one caution', () => {
    const html = lesson();
    expect(html).toContain('<h1>Quick change in G, C harp in 2nd position</h1>');
    expect(html).toContain('<dt>Position</dt><dd>2nd (cross harp)</dd>');
    expect(html).toContain('<dt>Tempo</dt><dd>96 beats a minute</dd>');
    expect([...html.matchAll(/<h2>([^<]*)<\/h2>/gu)].map(([, name]) => name)).toEqual([
      'The chart',
      'The chords on the harp',
      'Chords',
      'Take care',
    ]);
    // The chart, a harp for each chord, and three rows of the line: for paper and for a telephone.
    expect(html.match(/<figure class="wide"><svg /gu)).toHaveLength(1 + 3 + 3);
    expect(html.match(/<figure class="narrow"><svg /gu)).toHaveLength(1 + 3 + 3);
    expect(html.match(/dizzy/gu)).toHaveLength(1);
  });

  it('handoutPage cautions in the words that practice has as data', () => {
    expect(PRACTICE_CAUTIONS).toHaveLength(1);
    expect(lesson()).toContain(`<p>${PRACTICE_CAUTIONS[0]}</p>`);
  });

  it('handoutPage needs nothing from elsewhere, and is the same each time', () => {
    const html = lesson();
    expect(html).toBe(lesson());
    expect(html.replaceAll('http://www.w3.org/2000/svg', '')).not.toMatch(/https?:|<script|url\(/u);
  });

  it('handoutPage has no id twice', () => {
    const ids = [...lesson().matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('handoutPage escapes a title and keeps notation as it is given', () => {
    const { line, steps } = practiceLine(chart, harp);
    const soundings = steps.map((step) => step.soundings);
    const notation = '<svg class="staff"></svg>';
    const html = handoutPage(chart, 'C', {
      title: '<i>A & B</i>',
      lines: [{ title: 'Roots', line, soundings, notation }],
    });
    expect(html).toContain('<h1>&lt;i&gt;A &amp; B&lt;/i&gt;</h1>');
    expect(html).toContain(
      `<div class="staff" role="img" aria-label="Roots as staff notation">${notation}</div>`,
    );
  });

  it('handoutPage has words before a line, and shows it over a chart of its own', () => {
    const own = makeChart('basic', 'C');
    const line = makeLine([{ start: 0, duration: 3840, pitch: 72 }]);
    const html = handoutPage(chart, harp, {
      lines: [{ title: 'A fill', line, chart: own, words: ['Sing it first.', 'Then <play> it.'] }],
    });
    expect(html).toContain('<h2>A fill</h2>\n<p>Sing it first.</p>\n<p>Then &lt;play&gt; it.</p>');
    const titles = [...html.matchAll(/<title id="[^"]*">([^<]*)</gu)].map(([, title]) => title);
    expect(titles.filter((title) => title === 'A fill, bar 1')).toHaveLength(2);
    // Bar 1 of the own chart is C7, where that of the page is G7.
    expect(html.slice(html.indexOf('A fill'))).toContain('>C7</text>');
    expect(html.slice(html.indexOf('A fill'))).not.toContain('>G7</text>');
  });

  it('handoutPage puts a pickup before the first bar of its row', () => {
    const notes = [0, 480].map((start) => ({ start, duration: 480, pitch: 67 }));
    const line = makeLine(notes, { pickup: 480 });
    const html = handoutPage(chart, harp, { lines: [{ title: 'In', line }] });
    expect(html).toContain('>In, bar 1</title>');
    expect(html).toContain('>pickup</text>');
  });

  it('handoutPage leaves out a tempo and a name of the position that there is none of', () => {
    const html = handoutPage(makeChart('basic', 'G'), 'Bb');
    expect(html).not.toContain('<dt>Tempo</dt>');
    expect(html).toMatch(/<dt>Position<\/dt><dd>\d+th<\/dd>/u);
  });

  it('handoutPage draws harps for the player, and mirrored where that is asked', () => {
    const natural = handoutPage(chart, harp, { level: 'natural' });
    expect(handoutPage(chart, harp, { level: 'overbends' }).length).toBeGreaterThan(natural.length);
    const mirrored = handoutPage(chart, harp, { level: 'natural', mirrored: true });
    expect(mirrored).not.toBe(natural);
    // The same words in the same order.
    const wordsOf = (html: string) =>
      [...html.matchAll(/>([^<]+)<\/(?:text|desc|p)>/gu)].map(([, text]) => text);
    expect(wordsOf(mirrored)).toEqual(wordsOf(natural));
  });

  it('handoutPage has no id twice, whatever lines it has', () => {
    fc.assert(
      fc.property(
        fc.subarray([...PRACTICE_KINDS], { minLength: 1 }),
        fc.constantFrom(...THEME_IDS),
        (kinds, theme) => {
          const lines = kinds.map((kind) => {
            const { line, steps } = practiceLine(chart, harp, { kind });
            return { title: kind, line, soundings: steps.map((step) => step.soundings) };
          });
          const html = handoutPage(chart, harp, { lines, theme });
          const ids = [...html.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id);
          expect(new Set(ids).size).toBe(ids.length);
          expect(html.match(/<h2>/gu)).toHaveLength(3 + kinds.length);
        },
      ),
      { numRuns: 6 },
    );
  });

  const line = makeLine([{ start: 0, duration: 480, pitch: 67 }]);
  it.each([
    [7, 'a list of lines'],
    ['roots', 'a list of lines'],
    [[{ line }], 'a title of the line'],
    [[{ title: '  ', line }], 'a title of the line'],
    [[{ title: 'Roots', line, notation: 7 }], 'notation as SVG text'],
    [[{ title: 'Roots', line, words: 'one' }], 'a list of paragraphs'],
    [[{ title: 'Roots', line, words: [7] }], 'a list of paragraphs'],
  ])('handoutPage refuses %j in place of lines', (lines, expected) => {
    let error: unknown;
    try {
      handoutPage(chart, harp, { lines: lines as never });
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toMatchObject({ code: 'OPTION_UNKNOWN', expected });
  });
});
