import { scoreLine } from '@reedplate/chord-tone';
import { makeChart, parseForm } from '@reedplate/form';
import { harpName, makeHarp, type Sounding, soundings } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { everyHarp, explainPath, fitHarps } from '@reedplate/playability';
import { formatSounding } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyHarp, anyLevel, anyLook } from './arbitraries.fixture.js';
import { GALLERY } from './gallery.fixture.js';
import {
  breathPicture,
  chartPicture,
  effortPicture,
  fitPicture,
  harpPicture,
  linePicture,
  type Picture,
  type PictureOptions,
  scorePicture,
  THEME_IDS,
  THEMES,
  type Theme,
} from './index.js';
import { textBoxes } from './text-boxes.fixture.js';

const anyGallery = fc.constantFrom(...GALLERY);
const anyPitches = fc.array(fc.integer({ min: 60, max: 96 }), { minLength: 1, maxLength: 16 });

/** Half notes one after another. */
const lineOf = (pitches: readonly number[]) =>
  makeLine(pitches.map((pitch, at) => ({ start: at * 1920, duration: 1920, pitch })));

const idsOf = (svg: string): readonly string[] =>
  [...svg.matchAll(/ id="([^"]*)"/gu)].map(([, id = '']) => id);

/** The outline of a mark, whatever its place, size and colour: its corners within its own box. */
function outlineOf(mark: string): string {
  if (mark.startsWith('<circle')) return 'circle';
  const points = [...mark.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );
  const [left, top] = [0, 1].map((axis) => Math.min(...points.map((point) => point[axis] ?? 0)));
  const span = Math.max(...points.map(([x]) => x - (left ?? 0)));
  const within = points.map(([x, y]) => [(x - (left ?? 0)) / span, (y - (top ?? 0)) / span]);
  return JSON.stringify(within.map((point) => point.map((share) => Math.round(share * 10))));
}

/** Every colour swapped for another theme's, every size kept. */
const inColoursOf = (theme: Theme, other: Theme): Theme => ({
  ...theme,
  ...other,
  textSize: theme.textSize,
});

describe('every picture', () => {
  it('is the same each time that it is asked for', () => {
    fc.assert(
      fc.property(anyGallery, anyLook, ([, draw], look) => {
        expect(draw(look)).toEqual(draw(look));
      }),
      { numRuns: 30 },
    );
  });

  it('is frozen plain data that survives JSON', () => {
    for (const [, draw] of GALLERY) {
      const picture = draw({});
      expect(Object.isFrozen(picture)).toBe(true);
      expect(JSON.parse(JSON.stringify(picture))).toEqual(picture);
    }
  });

  it('has no id twice, and none in common with another picture', () => {
    const all = THEME_IDS.flatMap((theme) =>
      [320, 680].flatMap((width) => GALLERY.map(([, draw]) => draw({ theme, width }).svg)),
    );
    // A slide is as wide as it is, whatever is asked of the others.
    const different = [...new Set(all)];
    const ids = different.flatMap(idsOf);
    expect(ids.length).toBe(2 * different.length);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('refers only to ids that it has', () => {
    for (const [, draw] of GALLERY) {
      const { svg } = draw({});
      const [, named = ''] = /aria-labelledby="([^"]*)"/u.exec(svg) ?? [];
      expect(named.split(' ')).toEqual(idsOf(svg));
      expect(svg).not.toMatch(/url\(|href=/u);
    }
  });

  it('is well-formed: every element that opens is closed in its turn', () => {
    for (const [, draw] of GALLERY) {
      const open: string[] = [];
      for (const [, slash, name = '', closed] of draw({}).svg.matchAll(
        /<(\/?)([a-z]+)(?:\s[^<>]*?)?(\/?)>/gu,
      )) {
        if (slash === '/') expect(open.pop()).toBe(name);
        else if (closed !== '/') open.push(name);
      }
      expect(open).toEqual([]);
    }
  });

  it('says the same in words in every theme', () => {
    for (const [, draw] of GALLERY) {
      const said = THEME_IDS.map((theme) => {
        const { title, description, text } = draw({ theme });
        return { title, description, text };
      });
      for (const other of said) expect(other).toEqual(said[0]);
    }
  });

  it('differs between themes of one text size by its colours alone', () => {
    const { screen } = THEMES;
    for (const [, draw] of GALLERY) {
      for (const other of [THEMES.dark, THEMES.print, THEMES.large]) {
        const recoloured = draw({ theme: inColoursOf(screen, other) });
        const plain = draw({ theme: 'screen' });
        expect(recoloured.svg.replace(/rp-[0-9a-f]{8}|#[0-9a-f]{6}/giu, '')).toBe(
          plain.svg.replace(/rp-[0-9a-f]{8}|#[0-9a-f]{6}/giu, ''),
        );
      }
    }
  });

  it('draws with no colour that its theme does not have', () => {
    for (const theme of THEME_IDS) {
      const { paper, ink, faint, rule, chords } = THEMES[theme];
      const had = new Set<string>([
        ...[paper, ink, faint, rule],
        ...Object.values(chords).flatMap(({ tint, strong }) => [tint, strong]),
      ]);
      for (const [, draw] of GALLERY) {
        const used = draw({ theme }).svg.match(/#[0-9a-f]{6}/giu) ?? [];
        expect(used.filter((colour) => !had.has(colour))).toEqual([]);
      }
    }
  });

  it('has the width that is asked for, and a viewBox of its own size', () => {
    fc.assert(
      fc.property(anyGallery, fc.integer({ min: 400, max: 2000 }), ([name, draw], width) => {
        const picture = draw({ width });
        if (name !== 'chart-slide') expect(picture.width).toBe(width);
        expect(picture.svg).toContain(
          `viewBox="0 0 ${picture.width} ${picture.height}" width="${picture.width}" height="${picture.height}"`,
        );
      }),
      { numRuns: 30 },
    );
  });

  it('has the title that is asked for, in its heading and for a reader of screens', () => {
    const title = 'Week 3 & after';
    for (const [name, draw] of GALLERY.filter(
      ([each]) => !['chart-slide', 'line'].includes(each),
    )) {
      const picture = draw({ title });
      expect(picture.title, name).toBe(title);
      expect(picture.text.split('\n')[0]).toBe(title);
      expect(picture.svg).toMatch(/<title id="[^"]+">Week 3 &amp; after<\/title>/u);
    }
  });

  it('never tells by colour alone: chords on I, IV, V and others have four shapes', () => {
    const form = parseForm('I7 | IV7 | V7 | ii7', { id: 'four-steps', name: 'Four steps' });
    const { svg } = chartPicture(makeChart(form, 'G'), { theme: 'screen' });
    const { one, four, five, other } = THEMES.screen.chords;
    const shapes = [one, four, five, other].map(({ strong }) => {
      const [mark = ''] =
        svg.match(new RegExp(`<(?:circle|path) [^>]*stroke="${strong}"[^>]*>`, 'u')) ?? [];
      return outlineOf(mark);
    });
    expect(shapes).not.toContain('');
    expect(new Set(shapes).size).toBe(4);
  });
});

describe('the words of a picture name all that it shows', () => {
  it('harpPicture tells every sounding of every hole', () => {
    fc.assert(
      fc.property(anyHarp, anyLevel, (harp, level) => {
        const { text } = harpPicture(harp, { level });
        const told = text
          .split('\n')
          .slice(1)
          .flatMap((row) => row.split(': ')[1]?.split(', ') ?? []);
        const had = soundings(harp, { level }).map((each: Sounding) => formatSounding(each));
        expect(told.map((words) => words.split(' ')[0]).sort()).toEqual([...had].sort());
      }),
      { numRuns: 30 },
    );
  });

  it('chartPicture tells every bar of every section', () => {
    fc.assert(
      fc.property(anyChart, (chart) => {
        const { svg, text } = chartPicture(chart);
        const drawn = textBoxes(svg).filter((box) => /^\d+$/u.test(box.text)).length;
        const told = text
          .split('\n')
          .filter((row) => row.startsWith('bars '))
          .flatMap((row) => row.replace(/^bars [^:]*: /u, '').split(' | ')).length;
        expect(told).toBe(drawn);
      }),
      { numRuns: 30 },
    );
  });

  it('linePicture tells the tab of every note that it draws', () => {
    fc.assert(
      fc.property(anyPitches, anyHarp, (pitches, harp) => {
        const { svg, text } = linePicture(lineOf(pitches), harp);
        const drawn = textBoxes(svg)
          .map((box) => box.text)
          .filter((word) => /^(?:[-+(]|\?$)/u.test(word));
        const told = text
          .split('\n')
          .slice(1)
          .flatMap((row) => row.replace(/^[^:]*: /u, '').split(', '))
          .map((words) => words.split(' ')[0]);
        expect(told).toEqual(drawn);
        expect(told).toHaveLength(pitches.length);
      }),
      { numRuns: 30 },
    );
  });

  it('scorePicture tells every bar that it draws', () => {
    const chart = makeChart('basic', 'G');
    fc.assert(
      fc.property(anyPitches, (pitches) => {
        const { svg, text } = scorePicture(scoreLine(lineOf(pitches), chart), chart);
        const drawn = textBoxes(svg).filter((box) => /^bar \d+$/u.test(box.text)).length;
        expect(text.match(/^bar \d+/gmu)).toHaveLength(drawn);
      }),
      { numRuns: 20 },
    );
  });

  it('fitPicture tells every harp that it draws, with the same figures', () => {
    fc.assert(
      fc.property(anyPitches, fc.integer({ min: 1, max: 30 }), (pitches, count) => {
        const ranking = fitHarps(lineOf(pitches), everyHarp({ registers: ['low', 'standard'] }), {
          count,
        });
        const { svg, text } = fitPicture(ranking);
        const rows = text.split('\n').slice(1);
        const names = new Set(ranking.harps.map(({ harp }) => harpName(harp)));
        expect(new Set(rows.map((row) => row.split(':')[0]))).toEqual(names);
        const shares = textBoxes(svg)
          .map((box) => box.text)
          .filter((word) => word.endsWith(' %'));
        expect(shares.sort()).toEqual(
          rows.map((row) => /plays (\d+ %)/u.exec(row)?.[1] ?? '').sort(),
        );
      }),
      { numRuns: 15 },
    );
  });

  it('effortPicture and breathPicture tell every step of the path', () => {
    const harp = makeHarp('C');
    const inReach = fc.array(fc.constantFrom(60, 62, 64, 67, 71, 72, 74, 76), {
      minLength: 1,
      maxLength: 20,
    });
    fc.assert(
      fc.property(inReach, (pitches) => {
        const line = lineOf(pitches);
        const explained = explainPath(line, harp);
        if (!explained.playable) throw new Error('not playable');
        const rowsOf = (picture: Picture) =>
          picture.text.split('\n').filter((row) => /^bar \d+ beat /u.test(row));
        expect(rowsOf(effortPicture(explained))).toHaveLength(pitches.length);
        expect(rowsOf(breathPicture(explained, line))).toHaveLength(pitches.length);
      }),
      { numRuns: 20 },
    );
  });
});

describe('a harp for a left-handed player', () => {
  /** Rows of text as they stand, from the left. */
  const rowsOf = (svg: string): readonly (readonly [string, number, number])[] =>
    textBoxes(svg).map(({ text, left, right, top }) => [text, (left + right) / 2, top] as const);

  it('is mirrored cell by cell, and read in the same order from hole 1', () => {
    const asked: PictureOptions & { level: 'overbends'; chord: string; key: 'G' } = {
      level: 'overbends',
      chord: 'G7',
      key: 'G',
    };
    fc.assert(
      fc.property(anyHarp, (harp) => {
        const [plain, mirrored] = [false, true].map((isMirrored) =>
          harpPicture(harp, { ...asked, mirrored: isMirrored, width: 1000 }),
        );
        const [one, other] = [rowsOf(plain?.svg ?? ''), rowsOf(mirrored?.svg ?? '')];
        // The same texts in the same order: a reader of screens hears no difference.
        expect(other.map(([text]) => text)).toEqual(one.map(([text]) => text));
        expect(mirrored?.text).toBe(plain?.text);
        // And each at the same height; the places across add up to one sum for the cells.
        expect(other.map(([, , top]) => top)).toEqual(one.map(([, , top]) => top));
        const holes = one.flatMap(([text], at) =>
          /^\d+$/u.test(text) && one[at]?.[2] === one.find(([word]) => word === '10')?.[2]
            ? [at]
            : [],
        );
        const sums = holes.map((at) => Math.round((one[at]?.[1] ?? 0) + (other[at]?.[1] ?? 0)));
        expect(new Set(sums).size).toBe(1);
      }),
      { numRuns: 20 },
    );
  });
});
