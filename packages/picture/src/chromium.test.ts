import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { practiceLine } from '@reedplate/practice';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { GALLERY } from './gallery.fixture.js';
import { handoutPage } from './handout/handout-page.js';
import { THEME_IDS, type ThemeId } from './theme/themes.js';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const CHROMIUM = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find(
  (path) => existsSync(path),
);
const PDFTOTEXT = ['/usr/bin/pdftotext', '/usr/local/bin/pdftotext'].find((path) =>
  existsSync(path),
);
/** Why these tests do not run, where they do not: CI installs both from Debian. */
const REASON =
  CHROMIUM === undefined || PDFTOTEXT === undefined
    ? ' (skipped: no Chromium or no pdftotext here; scripts/browser/install-chromium.sh installs them)'
    : '';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

const chart = makeChart('quick-change', 'G', { tempo: 96 });
const harp = makeHarp('C');
const lesson = (theme: ThemeId = 'print'): string =>
  handoutPage(chart, harp, {
    theme,
    lines: (['roots', 'chords', 'arpeggios'] as const).map((kind) => {
      const { line, steps } = practiceLine(chart, harp, { kind });
      return { title: kind, line, soundings: steps.map(({ soundings }) => soundings) };
    }),
  });

/** As much of an element as is looked at in the browser. */
interface PageElement {
  readonly textContent: string | null;
  readonly scrollWidth: number;
  readonly viewBox: { readonly baseVal: { readonly width: number; readonly height: number } };
  readonly getAttribute: (name: string) => string | null;
  readonly getBBox: () => { readonly x: number; readonly width: number };
  readonly getBoundingClientRect: () => { readonly width: number };
  readonly querySelectorAll: (selector: string) => Iterable<PageElement>;
}

/** The page, for functions that run in the browser. */
declare const document: Pick<PageElement, 'querySelectorAll'> & {
  readonly documentElement: PageElement;
};

/** A piece of text as the browser sets it. */
interface Measured {
  readonly text: string;
  readonly size: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

interface MeasuredPicture {
  readonly width: number;
  readonly height: number;
  readonly texts: readonly Measured[];
}

/** Widths as the browser sets them; heights of the letters themselves, not of their line. */
function measure(): readonly MeasuredPicture[] {
  return [...document.querySelectorAll('svg')].map((svg) => ({
    width: svg.viewBox.baseVal.width,
    height: svg.viewBox.baseVal.height,
    texts: [...svg.querySelectorAll('text')].map((element) => {
      const text = element.textContent ?? '';
      const { x, width } = element.getBBox();
      const size = Number(element.getAttribute('font-size'));
      const base = Number(element.getAttribute('y'));
      const below = /[gjpqyQ,;()|]/u.test(text) ? 0.22 : 0.02;
      return {
        text,
        size,
        left: x,
        right: x + width,
        top: base - 0.74 * size,
        bottom: base + below * size,
      };
    }),
  }));
}

/** What is wrong with the text of a picture. A hundredth of a pixel is rounding. */
function complaintsOf({ width, height, texts }: MeasuredPicture): readonly string[] {
  const loose = 0.01;
  const complaints = texts
    .filter(
      ({ left, right, top, bottom }) =>
        left < -loose || top < -loose || right > width + loose || bottom > height + loose,
    )
    .map(({ text }) => `"${text}" is cut off`);
  for (const [at, a] of texts.entries()) {
    for (const b of texts.slice(at + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across > loose && down > loose) complaints.push(`"${a.text}" meets "${b.text}"`);
    }
  }
  return complaints;
}

interface AxeFinding {
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** What axe finds wrong with a page. */
async function findingsOf(page: Page): Promise<readonly string[]> {
  await page.addScriptTag({ path: AXE });
  const { violations } = (await page.evaluate('axe.run()')) as {
    readonly violations: readonly AxeFinding[];
  };
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`);
}

const pageOf = (body: string): string =>
  `<!doctype html><html lang="en"><head><title>Pictures</title><style>body{margin:0}svg{display:block}</style></head><body><main><h1>Pictures</h1>${body}</main></body></html>`;

describe.skipIf(REASON !== '')(`pictures in Chromium${REASON}`, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: CHROMIUM ?? '', args: ['--no-sandbox'] });
    page = await browser.newPage();
  });
  afterAll(async () => {
    await browser.close();
  });

  test('a picture whose texts meet or are cut off is found out', async () => {
    const text = (x: number, y: number) =>
      `<text x="${x}" y="${y}" font-size="12" font-family="Verdana">words</text>`;
    const svg = (body: string) => `<svg viewBox="0 0 100 50" width="100">${body}</svg>`;
    await page.setContent(
      pageOf(svg(text(5, 20)) + svg(text(5, 20) + text(15, 25)) + svg(text(80, 20))),
    );
    expect((await page.evaluate(measure)).map((each) => complaintsOf(each).length)).toEqual([
      0, 1, 1,
    ]);
  });

  test.each(THEME_IDS.flatMap((theme) => [320, 680].map((width) => [theme, width] as const)))(
    'every picture in theme %s, %i px wide, has its texts apart and whole',
    async (theme, width) => {
      await page.setViewportSize({ width: 1920, height: 1080 });
      await page.setContent(pageOf(GALLERY.map(([, draw]) => draw({ theme, width }).svg).join('')));
      const measured = await page.evaluate(measure);
      expect(measured).toHaveLength(GALLERY.length);
      for (const [at, picture] of measured.entries()) {
        expect(picture.texts.length).toBeGreaterThan(5);
        expect(complaintsOf(picture), GALLERY[at]?.[0]).toEqual([]);
      }
    },
  );

  test.each(THEME_IDS)('axe finds nothing in the pictures of theme %s', async (theme) => {
    await page.setContent(pageOf(GALLERY.map(([, draw]) => draw({ theme }).svg).join('')));
    expect(await findingsOf(page)).toEqual([]);
  });

  test('a reader of screens is told of each picture its title and description', async () => {
    const [, draw] = GALLERY[0] ?? [];
    const picture = draw?.({});
    await page.setContent(pageOf(picture?.svg ?? ''));
    const image = page.getByRole('img');
    expect(await image.count()).toBe(1);
    const named = page.getByRole('img', { name: picture?.title ?? '' });
    expect(await named.count()).toBe(1);
  });

  test.each(THEME_IDS)('axe finds nothing in a handout of theme %s', async (theme) => {
    await page.setViewportSize({ width: 1024, height: 768 });
    await page.setContent(lesson(theme));
    expect(await findingsOf(page)).toEqual([]);
  });

  test('a handout is read from its title through chart, harps and lines to the caution', async () => {
    await page.setContent(lesson());
    const read = await page.evaluate(() =>
      [...document.querySelectorAll('h1, h2, svg > title')].map((each) => each.textContent ?? ''),
    );
    const places = ['The chart', 'The chords on the harp', 'G7', 'roots', 'Take care'].map((name) =>
      read.indexOf(name),
    );
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test('a handout on a telephone scrolls no way but down, and its text is readable', async () => {
    await page.setViewportSize({ width: 320, height: 640 });
    await page.setContent(lesson());
    const { wide, smallest } = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      smallest: Math.min(
        ...[...document.querySelectorAll('svg')].map((svg) => {
          // Of each picture only the narrow one is shown.
          if (svg.getBoundingClientRect().width === 0) return 100;
          const scale = svg.getBoundingClientRect().width / svg.viewBox.baseVal.width;
          return Math.min(
            ...[...svg.querySelectorAll('text')].map(
              (text) => Number(text.getAttribute('font-size')) * scale,
            ),
          );
        }),
      ),
    }));
    expect(wide).toBeLessThanOrEqual(320);
    // As the browser lays them out: no text smaller than 10 px.
    expect(smallest).toBeGreaterThanOrEqual(9.99);
  });

  test.each(['A4', 'Letter'] as const)(
    'a handout printed on %s has its title, chords and tab, and few pages',
    async (format) => {
      await page.setContent(lesson());
      const pdf = await page.pdf({ format, tagged: true, preferCSSPageSize: true });
      const text = execFileSync(PDFTOTEXT ?? '', ['-layout', '-', '-'], { input: pdf }).toString();
      // A form feed ends each page.
      const pages = text.split('\f').length - 1;
      expect(pages).toBeGreaterThanOrEqual(3);
      expect(pages).toBeLessThanOrEqual(8);
      expect(text).toContain('Quick change in G, C harp in 2nd position');
      for (const word of ['G7', 'C7', 'D7', '-2', '+4', '(-2-3-4-5)', 'Take care', 'dizzy']) {
        expect(text).toContain(word);
      }
      expect(text.match(/dizzy/gu)).toHaveLength(1);
    },
  );
});
