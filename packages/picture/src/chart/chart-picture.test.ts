import { makeChart, parseForm } from '@reedplate/form';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyHarp, anyLevel, anyLook } from '../arbitraries.fixture.js';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { THEME_IDS } from '../theme/themes.js';
import { chartPicture } from './chart-picture.js';

const chart = makeChart('quick-change', 'G');

describe('chartPicture', () => {
  it('chartPicture keeps every text apart, readable and within the picture', () => {
    fc.assert(
      fc.property(
        anyChart,
        anyLook,
        fc.option(anyHarp, { nil: undefined }),
        anyLevel,
        fc.constantFrom('band' as const, 'student' as const),
        (drawn, look, harp, level, reader) => {
          const options = { ...look, level, reader, ...(harp === undefined ? {} : { harp }) };
          expect(textComplaints(chartPicture(drawn, options).svg)).toEqual([]);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('chartPicture as a slide is 16 to 9 and keeps its text apart', () => {
    fc.assert(
      fc.property(anyChart, fc.constantFrom(960, 1920), (drawn, width) => {
        const slide = chartPicture(drawn, { format: 'slide', width, harp: 'C' });
        expect(slide.height).toBe(Math.round((width * 9) / 16));
        expect(textComplaints(slide.svg)).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });

  it('chartPicture as a slide reads from the back of a room', () => {
    // A letter is read from so many times its height away: 1/24 of the slide is common practice, no source.
    const { svg, height } = chartPicture(chart, { format: 'slide', harp: 'C' });
    const numerals = textBoxes(svg).filter(({ text }) => /^(?:I|IV|V)7$/u.test(text));
    expect(numerals).toHaveLength(12);
    expect(Math.min(...numerals.map(({ size }) => size))).toBeGreaterThan(height / 24);
    const tab = textBoxes(svg).filter(({ text }) => text.startsWith('-') || text.startsWith('+'));
    expect(Math.min(...tab.map(({ size }) => size))).toBeGreaterThan(height / 48);
  });

  it('chartPicture shows numerals, names and holes of roots to a student', () => {
    const { text } = chartPicture(chart, { harp: 'C' });
    expect(text.split('\n')).toEqual([
      'Quick change in G, C harp in 2nd position',
      'bars 1 to 4: I7 G7 [-2 +3] | IV7 C7 [+1 +4] | I7 G7 [-2 +3] | I7 G7 [-2 +3]',
      'bars 5 to 8: IV7 C7 [+1 +4] | IV7 C7 [+1 +4] | I7 G7 [-2 +3] | I7 G7 [-2 +3]',
      'bars 9 to 12: V7 D7 [-1 -4] | IV7 C7 [+1 +4] | I7 G7 [-2 +3] | V7 D7 [-1 -4] (turnaround from bar 11)',
    ]);
  });

  it('chartPicture frames and points at the bar that sounds, in every chorus, and says which it is', () => {
    const long = makeChart('quick-change', 'G', { choruses: 3, intro: 'from-the-five' });
    const plain = chartPicture(long);
    const framed = (sounding: number) => chartPicture(long, { sounding });
    // Of choruses that are alike one is drawn: its bar 5 is lit each time. The introduction has four bars.
    const first = framed(4 + 5);
    expect(first.svg).not.toBe(plain.svg);
    expect(first.description).toBe(`${plain.description} Bar 9 sounds.`);
    const again = framed(4 + 12 + 5);
    const drawing = ({ svg }: { readonly svg: string }) => svg.slice(svg.indexOf('</desc>'));
    expect(drawing(again)).toBe(drawing(first));
    expect(drawing(framed(4 + 6))).not.toBe(drawing(first));
    expect(drawing(framed(1))).not.toBe(drawing(first));
    expect(first.text).toBe(plain.text);
    for (const sounding of [0, 41, 1.5]) {
      expect(() => framed(sounding)).toThrow(expect.objectContaining({ code: 'NUMBER_RANGE' }));
    }
  });

  it('chartPicture shows a band a sign for each bar like the one before', () => {
    const names = textBoxes(chartPicture(chart, { reader: 'band' }).svg).map(({ text }) => text);
    expect(names.filter((name) => name === 'G7')).toHaveLength(4);
    expect(names.filter((name) => name === 'C7')).toHaveLength(3);
    expect(chartPicture(chart, { reader: 'band' }).text).toContain('I7 G7 | I7 G7');
  });

  it('chartPicture draws choruses alike once, between repeat signs', () => {
    const three = makeChart('basic', 'G', { choruses: 3 });
    const { svg, text, description } = chartPicture(three);
    expect(svg).toContain('>×3</text>');
    expect(text).toContain('From chorus 1, 3 times:');
    expect(description).toContain('12 bars, 3 times');
    const numbers = textBoxes(svg).filter(({ text: found }) => /^\d+$/u.test(found));
    expect(numbers).toHaveLength(12);
  });

  it('chartPicture draws an introduction and another ending by themselves', () => {
    const played = makeChart('basic', 'G', {
      choruses: 3,
      intro: 'from-the-five',
      ending: 'five-one',
    });
    const { text } = chartPicture(played);
    expect(text.split('\n').filter((row) => row.endsWith(':'))).toEqual([
      'Introduction:',
      'From chorus 1, 2 times:',
      'From chorus 3:',
    ]);
  });

  it('chartPicture refuses a reader, format or width that it does not know', () => {
    const refused = [
      { reader: 'drummer' },
      { format: 'poster' },
      { width: 1e9 },
      { level: 'expert', harp: 'C' },
    ];
    for (const options of refused) {
      expect(() => chartPicture(chart, options as object)).toThrow(/expected/u);
    }
  });

  it('chartPicture takes fewer bars a row where four have no room, and refuses what one bar has none for', () => {
    const crowded = makeChart(
      parseForm('Imaj7 bVI7 bII7 V7 | I7 | IV7 | I7', { id: 'crowded', name: 'Crowded' }),
      'Gb',
    );
    const rowsOf = (width: number): number => {
      const numbers = textBoxes(chartPicture(crowded, { width }).svg).filter(({ text }) =>
        /^[1-4]$/u.test(text),
      );
      return new Set(numbers.map(({ top }) => top)).size;
    };
    expect(rowsOf(1200)).toBe(1);
    expect(rowsOf(420)).toBe(2);
    expect(rowsOf(300)).toBe(4);
    let error: unknown;
    try {
      chartPicture(makeChart(parseForm('#ivm7b5 bVIImaj7 #ivm7b5 bVIImaj7'), 'Gb'), { width: 200 });
    } catch (thrown) {
      error = thrown;
    }
    expect(error).toMatchObject({ code: 'NUMBER_RANGE', value: 200 });
    expect(Number((error as { nearest: string }).nearest)).toBeGreaterThan(200);
  });

  it('chartPicture keeps marks, chords and numbers clear of the signs of a repeat', () => {
    for (const theme of THEME_IDS) {
      for (const reader of ['band', 'student'] as const) {
        const { svg } = chartPicture(makeChart('basic', 'G', { choruses: 2 }), {
          theme,
          reader,
          width: 320,
        });
        const dots = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/gu)].map(
          ([, x, y, r]) => ({ x: Number(x), y: Number(y), r: Number(r) }),
        );
        // Dots of a repeat are smaller than any mark.
        const small = Math.min(...dots.map(({ r }) => r)) * 1.01;
        for (const { x, y, r } of dots.filter((dot) => dot.r <= small)) {
          for (const box of textBoxes(svg)) {
            const apart =
              x + r <= box.left || x - r >= box.right || y + r <= box.top || y - r >= box.bottom;
            expect(apart, box.text).toBe(true);
          }
        }
      }
    }
  });
});
