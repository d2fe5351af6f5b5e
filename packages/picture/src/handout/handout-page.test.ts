import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { PRACTICE_CAUTIONS, practiceLine } from '@reedplate/practice';
import { describe, expect, it } from 'vitest';
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
});
