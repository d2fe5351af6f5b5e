/**
 * Plays 100 choruses on the page and looks whether the lit bar follows the audio clock, and whether memory grows.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/play-along/long-run.ts [choruses]
 */
import { chromium } from 'playwright-core';
import { CHROMIUM, servePage, WATCH } from './serve-page.js';

const [choruses = '100'] = process.argv.slice(2);
/** Four bars of 0.8 seconds at 300 beats a minute. */
const SECONDS_OF_BAR = 0.8;
const BARS = 4;
const MEGABYTE = 1_000_000;

const served = await servePage();
const browser = await chromium.launch({
  executablePath: CHROMIUM ?? '',
  args: ['--no-sandbox', '--js-flags=--expose-gc', '--enable-precise-memory-info'],
});
const page = await browser.newPage();
await page.addInitScript(WATCH);
await page.goto(served.address);
const opened = await page.evaluate(
  "performance.getEntriesByType('navigation')[0].domContentLoadedEventEnd",
);
console.log(`the page was ready ${Math.round(Number(opened))} ms after it was asked for`);
await page.click('#care-read');
for (const [id, value] of [
  ['own-bars', '| I7 | IV7 | V7 | I7 |'],
  ['tempo', '300'],
  ['choruses', choruses],
] as const) {
  await page.fill(`#${id}`, value);
  await page.press(`#${id}`, 'Tab');
}
await page.click('#play');
const heap = (): Promise<number> =>
  page.evaluate('(gc(), performance.memory.usedJSHeapSize)') as Promise<number>;
const seconds = Number(choruses) * BARS * SECONDS_OF_BAR;
const heaps: number[] = [];
let [frames, late] = [0, 0];
for (let at = 0; at < 10; at += 1) {
  await page.waitForTimeout((seconds * 1000) / 10);
  const watched = (await page.evaluate(`(() => {
    const frames = watched.frames.splice(0);
    return { first: watched.first ??= watched.starts[0], frames };
  })()`)) as { readonly first: number; readonly frames: readonly (readonly [number, string])[] };
  const barOne = watched.first + SECONDS_OF_BAR;
  const wordsAt = (second: number): string => {
    const played = Math.floor((second - barOne) / SECONDS_OF_BAR);
    return played < 0
      ? 'Count-in'
      : `Chorus ${Math.floor(played / BARS) + 1}, bar ${(played % BARS) + 1}`;
  };
  for (const [place, [second, bar]] of watched.frames.entries()) {
    const before = watched.frames[place - 1]?.[0] ?? second - 0.02;
    if (second < barOne || second > barOne + seconds - 0.1) continue;
    frames += 1;
    if (bar !== wordsAt(second) && bar !== wordsAt(before - 0.025)) late += 1;
  }
  heaps.push(await heap());
  await page.evaluate('watched.starts.length = 0');
  console.log(
    `${at + 1} of 10: heap ${((heaps.at(-1) ?? 0) / MEGABYTE).toFixed(1)} MB, ${frames} frames, ${late} late`,
  );
}
await browser.close();
served.close();
const growth = ((heaps.at(-1) ?? 0) - (heaps[1] ?? 0)) / MEGABYTE;
console.log(
  `${choruses} choruses: the heap grew by ${growth.toFixed(2)} MB after the first fifth; ${late} of ${frames} frames showed another bar`,
);
process.exitCode = growth > 2 || late > 0 ? 1 : 0;
