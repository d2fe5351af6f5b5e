/**
 * Every picture in every theme at three sizes, as Chromium draws them, on contact sheets to look at: 320 px
 * as on a telephone, 800 px as on a screen, and the handout and all pictures printed on A4.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/look-at-pictures.ts .outside/pictures
 *
 * It needs Chromium and pdftoppm (`scripts/browser/install-chromium.sh`).
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Browser, chromium } from 'playwright-core';
import { GALLERY } from '../packages/picture/src/gallery.fixture.js';
import { THEME_IDS, THEMES, type ThemeId } from '../packages/picture/src/theme/themes.js';
import { shownHandout } from './sheets/pictures.js';

const [folder = '.outside/pictures', ...only] = process.argv.slice(2);
const themes = THEME_IDS.filter((id) => only.length === 0 || only.includes(id));
const SCREENS = [
  { width: 320, columns: 5 },
  { width: 800, columns: 2 },
] as const;

/** All pictures of a theme side by side. */
function contactSheet(theme: ThemeId, width: number, columns: number): string {
  const { paper } = THEMES[theme];
  const figures = GALLERY.map(([name, draw]) => {
    const { svg } = draw({ theme, width });
    return `<figure><figcaption>${name}, ${width} px</figcaption>${svg}</figure>`;
  });
  const style = `body{margin:8px;background:#888;width:${columns * (width + 12)}px;columns:${columns};column-gap:8px;font:10px sans-serif}
figure{margin:0 0 8px;break-inside:avoid;background:${paper}}figcaption{background:#ddd}svg{display:block;width:${width}px;height:auto}`;
  return `<!doctype html><html lang="en"><title>${theme}</title><style>${style}</style>${figures.join('')}</html>`;
}

/** The pages of A4 as they leave a printer, side by side. */
async function printOnA4(browser: Browser, html: string, name: string): Promise<void> {
  const page = await browser.newPage({ viewport: { width: 1640, height: 800 } });
  await page.setContent(html);
  const path = join(folder, `${name}.pdf`);
  await page.pdf({ path, format: 'A4', printBackground: true, preferCSSPageSize: true });
  const prefix = `${name}-page`;
  execFileSync('pdftoppm', ['-r', '80', '-png', path, join(folder, prefix)]);
  const files = readdirSync(folder).filter((file) => file.startsWith(prefix));
  const images = files.map((file) => {
    const source = readFileSync(join(folder, file)).toString('base64');
    rmSync(join(folder, file));
    return `<img alt="" style="width:530px;margin:4px" src="data:image/png;base64,${source}">`;
  });
  await page.setContent(`<body style="margin:4px;background:#888">${images.join('')}</body>`);
  await page.screenshot({ path: join(folder, `${name}.png`), fullPage: true });
  await page.close();
}

function paperOf(theme: ThemeId): string {
  const figures = GALLERY.map(([, draw]) => `<figure>${draw({ theme }).svg}</figure>`);
  return `<!doctype html><html lang="en"><title>${theme}</title><style>@page{margin:12mm}body{margin:0}figure{margin:0 0 8px;break-inside:avoid}svg{display:block;width:100%;height:auto}</style>${figures.join('')}</html>`;
}

mkdirSync(folder, { recursive: true });
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox'],
});
for (const theme of themes) {
  for (const { width, columns } of SCREENS) {
    const page = await browser.newPage({
      viewport: { width: columns * (width + 12) + 24, height: 800 },
    });
    await page.setContent(contactSheet(theme, width, columns));
    await page.screenshot({ path: join(folder, `${theme}-${width}.png`), fullPage: true });
    await page.close();
  }
  await printOnA4(browser, paperOf(theme), `${theme}-A4`);
}
const telephone = await browser.newPage({ viewport: { width: 320, height: 640 } });
await telephone.setContent(shownHandout());
await telephone.screenshot({ path: join(folder, 'handout-320.png'), fullPage: true });
await printOnA4(browser, shownHandout(), 'handout-A4');
writeFileSync(join(folder, 'handout.html'), shownHandout());
await browser.close();
console.log(`${GALLERY.length} pictures in ${themes.join(', ')}: ${folder}`);
