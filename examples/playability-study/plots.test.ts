import { describe, expect, test } from 'vitest';
import { drawBars } from './plots.js';

const PLOT = {
  title: 'Effort <by> tuning & position',
  unit: 'points a note',
  groups: [
    {
      label: 'one',
      bars: [
        { label: 'a', value: 2, low: 1, high: 4 },
        { label: 'b', value: 1, low: 0.5, high: 2 },
      ],
    },
    { label: 'two', bars: [{ label: 'c', value: 0, low: 0, high: 0 }] },
  ],
};

/** Widths of the bars, after that of the background. */
const widthsOf = (svg: string): readonly number[] =>
  [...svg.matchAll(/<rect (?:[^>]*? )?width="([^"]*)"/gu)]
    .slice(1)
    .map(([, width]) => Number(width));

describe('drawBars', () => {
  test('drawBars closes every element it opens and escapes every label', () => {
    const svg = drawBars(PLOT);
    const opened = [...svg.matchAll(/<(text|title|svg)[ >]/gu)].map(([, name]) => name);
    const closed = [...svg.matchAll(/<\/(text|title|svg)>/gu)].map(([, name]) => name);
    expect(closed.sort()).toEqual(opened.sort());
    expect(svg).toContain('<title>Effort &lt;by&gt; tuning &amp; position</title>');
    expect(svg).not.toContain('<by>');
  });

  test('drawBars draws lengths in proportion to values', () => {
    const [a = 0, b = 0, c = 0] = widthsOf(drawBars(PLOT));
    expect(a).toBeCloseTo(2 * b, 1);
    expect([a > 0, c]).toEqual([true, 0]);
  });

  test('drawBars says every label and value beside its bar, so that colour is not needed', () => {
    for (const words of ['>a<', '>b<', '>c<', '>one<', '>two<', '>2<', '>1<', '>0<']) {
      expect(drawBars(PLOT)).toContain(words);
    }
  });

  test('drawBars of nothing but zeros draws no NaN', () => {
    const { groups, ...rest } = PLOT;
    expect(drawBars({ ...rest, groups: groups.slice(1) })).not.toContain('NaN');
    expect(drawBars({ ...rest, groups: [] })).not.toContain('Infinity');
  });
});
