/**
 * Thirty sheets as two engravers draw them, on one page to look at: Verovio draws what `writeMusicXml` writes,
 * abcm2ps (of Debian, `apt-get install abcm2ps`) what `writeAbc` writes.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/contact-sheet.ts .outside/contact-sheet.html
 *
 * Where Chromium is installed the page is cut into pictures of five sheets beside it.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { FORMS, type Form, makeChart } from '@reedplate/form';
import { tabLyrics, writeAbc, writeMusicXml } from '@reedplate/interchange';
import { makeHarp } from '@reedplate/layout';
import { harpKeyOf } from '@reedplate/position';
import { PRACTICE_KINDS, practiceLine } from '@reedplate/practice';
import { chromium } from 'playwright-core';
import { drawerOfVerovio } from '../packages/interchange/src/musicxml/verovio.fixture.js';
import { keyFor } from '../test/playable/key-for.js';

const SHEETS = 30;
const TONICS = ['G', 'A', 'Bb', 'C', 'D', 'E', 'F'] as const;

/** Sheets of as many forms, keys and kinds as there is room for. */
function sheets() {
  return Array.from({ length: SHEETS }, (_, at) => {
    const form = FORMS[(at * 3) % FORMS.length] as Form;
    const tonic = TONICS[at % TONICS.length] ?? 'G';
    const kind = PRACTICE_KINDS[at % PRACTICE_KINDS.length] ?? 'roots';
    const harp = makeHarp(harpKeyOf(tonic, 2));
    const key = keyFor(form, tonic);
    const chart = makeChart(form, key, { tempo: 80 + at * 4, choruses: at % 5 === 0 ? 2 : 1 });
    const { line, steps } = practiceLine(chart, harp, { kind });
    const soundings = steps.map((step) => step.soundings);
    const title = `${at + 1}. ${kind} of ${form.name} in ${key}`;
    const subtitle = `${harp.key} harp, 2nd position`;
    return {
      sheet: { line, chart, key },
      words: tabLyrics(line, harp, { soundings }),
      title,
      subtitle,
    };
  });
}

/** What abcm2ps draws, page by page. */
function engraveAbc(abc: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'contact-'));
  writeFileSync(join(folder, 'sheet.abc'), abc);
  execFileSync('abcm2ps', ['-q', '-g', '-O', join(folder, 'out'), join(folder, 'sheet.abc')], {
    stdio: 'ignore',
  });
  const pages = readdirSync(folder).filter((name) => name.endsWith('.svg'));
  return pages.map((name) => readFileSync(join(folder, name), 'utf8')).join('\n');
}

/** One page as wide as A4 and as high as the music, as in a handout of the command. */
const LAYOUT = Object.freeze({
  adjustPageHeight: true,
  footer: 'none',
  svgViewBox: true,
  pageWidth: 1750,
  pageHeight: 60000,
  minLastJustification: 0,
});

const draw = await drawerOfVerovio(LAYOUT);
const cells = sheets().map(({ sheet, ...options }) => {
  const pictures = [draw(writeMusicXml(sheet, options)), engraveAbc(writeAbc(sheet, options))];
  const shown = pictures.map((svg) => {
    const source = Buffer.from(svg.slice(svg.indexOf('<svg'))).toString('base64');
    return `<img alt="${options.title}" src="data:image/svg+xml;base64,${source}">`;
  });
  return `<section>${shown.join('')}</section>`;
});
const style =
  'body{margin:0}section{display:flex;width:1600px;height:330px;overflow:hidden;margin:4px;border:1px solid #999}img{width:50%;height:max-content}';
const pageOf = (sections: readonly string[]): string =>
  `<!doctype html><html lang="en"><title>Thirty sheets</title><style>${style}</style>${sections.join('\n')}</html>\n`;
const [out = '.outside/contact-sheet.html'] = process.argv.slice(2);
writeFileSync(out, pageOf(cells));

const IN_PICTURE = 5;
const CHROMIUM = '/usr/bin/chromium';
if (existsSync(CHROMIUM)) {
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ['--no-sandbox'] });
  const page = await browser.newPage({ viewport: { width: 1620, height: 600 } });
  for (let first = 0; first < cells.length; first += IN_PICTURE) {
    await page.setContent(pageOf(cells.slice(first, first + IN_PICTURE)));
    const path = out.replace(/(\.html)?$/u, `-${first / IN_PICTURE + 1}.png`);
    await page.screenshot({ path, fullPage: true });
  }
  await browser.close();
}
console.log(`${SHEETS} sheets, drawn by Verovio (left) and abcm2ps (right): ${out}`);
