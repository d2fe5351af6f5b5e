/**
 * The page to play along with as it looks in the middle of a chorus: on a desk, a telephone and a projector.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/play-along/screenshots.ts docs/play-along
 */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { CHROMIUM, servePage } from './serve-page.js';

const [folder = '.outside/play-along'] = process.argv.slice(2);
const SCREENS = [
  { name: 'desk', width: 1280, height: 1000, look: 'screen' },
  { name: 'telephone', width: 360, height: 760, look: 'dark' },
  { name: 'projector', width: 1920, height: 1080, look: 'large' },
] as const;

mkdirSync(folder, { recursive: true });
const served = await servePage();
const browser = await chromium.launch({ executablePath: CHROMIUM ?? '', args: ['--no-sandbox'] });
for (const { name, width, height, look } of SCREENS) {
  const page = await browser.newPage({ viewport: { width, height } });
  await page.goto(served.address);
  await page.click('#care-read');
  await page.selectOption('#look', look);
  await page.fill('#tempo', '120');
  await page.press('#tempo', 'Tab');
  await page.click('#play');
  // Bar 4 of a form whose bar 5 has another chord: the change is called in its last beat.
  await page.waitForSelector('#board[data-soon=true]', { timeout: 20_000 });
  await page.waitForFunction("document.getElementById('bar').textContent.endsWith('bar 4')");
  await page.waitForSelector('#board[data-soon=true]');
  await page.evaluate('scrollTo(0, 0)');
  await page.screenshot({ path: join(folder, `${name}.png`) });
  await page.screenshot({ path: join('.outside', `play-along-${name}-whole.png`), fullPage: true });
  await page.close();
}
await browser.close();
served.close();
console.log(`${SCREENS.length} screens: ${folder}`);
