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

/** Lightness of a colour, 0 to 1, by the weights of ITU-R BT.709 (value from memory). */
function lightness(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [0, 2, 4].map((at) =>
    Number.parseInt(hex.slice(at, at + 2), 16),
  );
  return (0.2126 * red + 0.7152 * green + 0.0722 * blue) / 255;
}

describe('drawBars', () => {
  test('drawBars closes every element it opens and escapes every label', () => {
    const svg = drawBars(PLOT);
    const opened = [...svg.matchAll(/<(text|title|desc|svg)[ >]/gu)].map(([, name]) => name);
    const closed = [...svg.matchAll(/<\/(text|title|desc|svg)>/gu)].map(([, name]) => name);
    expect(closed.sort()).toEqual(opened.sort());
    expect(svg).toContain('<title id="title">Effort &lt;by&gt; tuning &amp; position</title>');
    expect(svg).not.toContain('<by>');
  });

  test('drawBars says in its description every bar with its interval, for those who cannot see it', () => {
    const svg = drawBars(PLOT);
    expect(svg).toContain('role="img" aria-labelledby="title desc"');
    const [, said = ''] = /<desc id="desc">([^<]*)<\/desc>/u.exec(svg) ?? [];
    expect(said).toBe(
      'Bars of points a note, with 95 % intervals. one: a 2 (1 to 4), b 1 (0.5 to 2) two: c 0 (0 to 0)',
    );
  });

  test('drawBars: bars of a group differ in lightness too, not in colour alone', () => {
    const bars = ['a', 'b', 'c', 'd', 'e'].map((label) => ({ label, value: 1, low: 1, high: 1 }));
    const svg = drawBars({ ...PLOT, groups: [{ label: 'all', bars }] });
    const fills = [...svg.matchAll(/fill="#([0-9a-f]{6})" stroke/gu)].map(([, hex]) => hex ?? '');
    expect(new Set(fills).size).toBe(5);
    const neighbours = fills
      .slice(1)
      .map((fill, at) => lightness(fill) - lightness(fills[at] ?? ''));
    for (const step of neighbours) expect(Math.abs(step)).toBeGreaterThan(0.1);
  });

  test('drawBars draws each interval from its low to its high end', () => {
    const [first] = [...drawBars(PLOT).matchAll(/<path d="M([\d.]+) [\d.]+H([\d.]+)/gu)];
    const [, from, to] = (first ?? []).map(Number);
    const [width = 0] = widthsOf(drawBars(PLOT));
    expect((to ?? 0) - (from ?? 0)).toBeCloseTo(1.5 * width, 1);
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
