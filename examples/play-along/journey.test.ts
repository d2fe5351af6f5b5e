import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { makeBacking, renderBand } from '@reedplate/backing';
import { readPiece } from '@reedplate/interchange';
import { writeWav } from '@reedplate/listen';
import { build } from 'esbuild';
import { type Browser, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { runWords } from '../../packages/cli/src/shared/run-words.fixture.js';
import { ROOT } from '../../scripts/lib/root.mjs';
import {
  CHROMIUM,
  microphoneArguments,
  type ServedPage,
  servePage,
  WATCH,
} from '../../scripts/play-along/serve-page.js';
import { eventsBetween } from './src/place.js';
import { makeSession } from './src/session.js';
import { FIRST_SET_UP } from './src/set-up.js';

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

/** Why these tests do not run, where they do not: CI installs it from Debian. */
const REASON =
  CHROMIUM === undefined
    ? ' (skipped: no Chromium here; scripts/browser/install-chromium.sh installs it)'
    : '';
const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

/** One chorus of a second a bar. */
const SET_UP = {
  ...FIRST_SET_UP,
  form: 'basic',
  tempo: 240,
  choruses: 1,
  ears: 'microphone',
  line: 'arpeggios',
} as const;
const session = makeSession(SET_UP);
/**
 * Second of the recording at which bar 1 begins: the bar that is counted in, what the page waits before it, and
 * what the device loses of the beginning. The rest is estimated, by page and command alike.
 */
const BAR_ONE = 1.5;

/** A recording of the practice line over a chorus, or of silence as long. */
function recordingOf(seconds: number, isPlayed: boolean): Uint8Array {
  const none = { mute: true };
  const silent = { bass: none, comping: none, drums: none, countIn: 0, ending: false };
  const line = session.shown?.line;
  const backing = makeBacking(session.song, { ...silent, ...(line && isPlayed ? { line } : {}) });
  const { samples, sampleRate } = renderBand(backing, { sampleRate: 48_000 });
  const whole = new Float32Array(Math.ceil((seconds + 14) * sampleRate));
  whole.set(samples.subarray(0, whole.length - seconds * sampleRate), seconds * sampleRate);
  return writeWav({ sampleRate, samples: whole });
}

interface Watched {
  readonly starts: readonly number[];
  readonly frames: readonly (readonly [second: number, bar: string])[];
}

const watchedOn = (page: Page): Promise<Watched> =>
  page.evaluate('({ starts: watched.starts, frames: watched.frames })');

describe.skipIf(REASON !== '')(`the page to play along with, in Chromium${REASON}`, () => {
  const folder = mkdtempSync(join(tmpdir(), 'journey-'));
  const take = join(folder, 'take.wav');
  let served: ServedPage;
  let browser: Browser;
  let page: Page;
  const errors: string[] = [];
  const strangers: string[] = [];

  /** Opens the page in a browser whose microphone is a file. */
  async function open(wav: string): Promise<readonly [Browser, Page]> {
    const args = [...microphoneArguments(wav)];
    const opened = await chromium.launch({ executablePath: CHROMIUM ?? '', args });
    const context = await opened.newContext({ viewport: { width: 1280, height: 900 } });
    const fresh = await context.newPage();
    fresh.on('console', (message) => {
      if (message.type() === 'error') errors.push(message.text());
    });
    fresh.on('pageerror', (error) => errors.push(error.message));
    fresh.on('request', (request) => {
      if (!request.url().startsWith(served.address) && !request.url().startsWith('blob:'))
        strangers.push(request.url());
    });
    await fresh.addInitScript(WATCH);
    await fresh.goto(served.address);
    return [opened, fresh];
  }

  /** Chooses what is played, as a player does. */
  async function choose(on: Page, more: Readonly<Record<string, string>> = {}): Promise<void> {
    const { form, tempo, choruses, ears } = SET_UP;
    await on.selectOption('#form', form);
    await on.selectOption('#ears', ears);
    const numbers = { tempo: `${tempo}`, choruses: `${choruses}`, ...more };
    for (const [id, value] of Object.entries(numbers)) {
      await on.fill(`#${id}`, value);
      await on.press(`#${id}`, 'Tab');
    }
  }

  beforeAll(async () => {
    served = await servePage();
    writeFileSync(take, recordingOf(BAR_ONE, true));
    [browser, page] = await open(take);
  });
  afterAll(async () => {
    await browser.close();
    served.close();
    rmSync(folder, { recursive: true });
  });

  test('cautions once about loud sound, before all else', async () => {
    const care = page.getByRole('heading', { name: 'Before you begin' });
    expect(await care.isVisible()).toBe(true);
    await page.getByRole('button', { name: 'I have read this' }).press('Enter');
    expect(await care.isVisible()).toBe(false);
    await page.reload();
    expect(await care.isVisible()).toBe(false);
  });

  test('plays a chorus by keyboard, hears the take, and scores it as the command does', async () => {
    await choose(page);
    await page.focus('#play');
    await page.keyboard.press('Enter');
    const total = page.locator('#total');
    await total.waitFor({ timeout: 90_000 });
    const shown = Number.parseInt((await total.textContent()) ?? '', 10);
    const download = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save as JSON' }).click();
    const heard = join(folder, 'heard.json');
    await (await download).saveAs(heard);
    const song = [
      '--form',
      'basic',
      '--key',
      'G',
      '--harp',
      'C',
      '--latency',
      'estimate',
      '--json',
    ];
    const scored = async (file: string, words: readonly string[] = []) => {
      const { out } = await runWords(['score', file, ...words, ...song], {
        readBytes: () => readFileSync(join(folder, file)),
      });
      return JSON.parse(out);
    };
    // The same take: the page shows whole points.
    const same = await scored('heard.json');
    expect(Math.abs(shown - same.total)).toBeLessThanOrEqual(0.5);
    // The same recording: the page meets it where its device was opened, to a tenth of a second or so.
    const recorded = await scored('take.wav', ['--tempo', '240', '--bar-one', `${BAR_ONE}`]);
    expect(recorded.notes.length).toBeGreaterThan(30);
    expect(same.notes.length).toBeGreaterThan(30);
    expect(recorded.total).toBeGreaterThan(60);
    expect(Math.abs(shown - recorded.total)).toBeLessThanOrEqual(15);
    expect(await page.locator('#result-body svg').count()).toBe(1);
    expect(await page.getByRole('heading', { name: 'Practise next' }).count()).toBe(1);
  });

  test('has set every sound on its second, within a millisecond', async () => {
    const { starts } = await watchedOn(page);
    const plan = eventsBetween(session, 0, 60).map(({ start }) => start);
    expect(starts).toHaveLength(plan.length);
    const began = starts[0] ?? 0;
    const off = plan.map((second, at) => Math.abs((starts[at] ?? 0) - began - second));
    expect(Math.max(...off)).toBeLessThan(0.001);
  });

  test('lights each bar within a frame of the audio clock', async () => {
    const { starts, frames } = await watchedOn(page);
    const barOne = (starts[0] ?? 0) + session.countIn;
    const barAt = (second: number): string => {
      const bar = Math.floor((second - barOne) / session.secondsOfBar) + 1;
      return bar < 1 ? 'Count-in' : `Chorus 1, bar ${bar}`;
    };
    const playing = frames.filter(
      ([second]) => second > barOne - 0.8 && second < barOne + session.passSeconds - 0.2,
    );
    expect(playing.length).toBeGreaterThan(100);
    const wrong = playing.filter(([second, bar], at) => {
      const before = frames[frames.indexOf(playing[at] as Watched['frames'][number]) - 1];
      // The frame before, and as much as the clock of sound moves at a time.
      const since = Math.min(before?.[0] ?? second, second) - 0.025;
      return bar !== barAt(second) && bar !== barAt(since);
    });
    expect(wrong).toEqual([]);
  });

  test('saves the take as JSON, MIDI and MusicXML, and opens it again with the same score', async () => {
    const total = await page.locator('#total').textContent();
    for (const [format, file] of [
      ['JSON', 'take.json'],
      ['MIDI', 'take.mid'],
      ['MusicXML', 'take.musicxml'],
    ] as const) {
      const download = page.waitForEvent('download');
      await page.getByRole('button', { name: `Save as ${format}` }).click();
      const path = join(folder, file);
      await (await download).saveAs(path);
      expect(readPiece(readFileSync(path)).line.notes.length).toBeGreaterThan(10);
    }
    await page.evaluate("document.getElementById('total').textContent = ''");
    await page.setInputFiles('#open', join(folder, 'take.json'));
    await page.waitForFunction("document.getElementById('total').textContent !== ''");
    expect(await page.locator('#total').textContent()).toBe(total);
  });

  test.each([
    ['screen', 1280],
    ['dark', 320],
    ['large', 320],
  ] as const)(
    'axe finds nothing in look %s, %i px wide, which scrolls down alone',
    async (look, width) => {
      await page.setViewportSize({ width, height: 800 });
      await page.selectOption('#look', look);
      await page.addScriptTag({ path: AXE });
      const { violations } = (await page.evaluate('axe.run()')) as {
        readonly violations: readonly {
          readonly id: string;
          readonly nodes: readonly { readonly html: string }[];
        }[];
      };
      const found = violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
      expect(found).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(
        width,
      );
    },
  );

  test('remembers what was chosen, and opens without a network', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.selectOption('#key', 'A');
    await page.reload();
    await page.evaluate('navigator.serviceWorker.ready');
    await page.reload();
    await page.context().setOffline(true);
    await page.reload();
    expect(await page.locator('#summary').textContent()).toContain('in A, D harp in position 2');
    await page.context().setOffline(false);
  });

  test('takes a loop, own bars and another harp, and says what it does not understand', async () => {
    await page.fill('#own-bars', '| I7 | H7 |');
    await page.press('#own-bars', 'Tab');
    expect(await page.getByRole('alert').textContent()).toMatch(/H7/u);
    await page.fill('#own-bars', '| I7 | IV7 | V7 | I7 |');
    await page.press('#own-bars', 'Tab');
    expect(await page.getByRole('alert').textContent()).toBe('');
    expect(await page.locator('#chart svg desc').textContent()).toMatch(/4 bars/u);
    await page.selectOption('#harp', 'F');
    expect(await page.locator('#harp-now svg title').textContent()).toMatch(/^F harp/u);
  });

  test('says that nothing was heard where the microphone gave silence', async () => {
    const silence = join(folder, 'silence.wav');
    writeFileSync(silence, recordingOf(BAR_ONE, false));
    const [other, quiet] = await open(silence);
    await choose(quiet, { 'loop-from': '1', 'loop-to': '1' });
    await quiet.click('#play');
    await quiet.getByText('Nothing was heard in this chorus').waitFor({ timeout: 60_000 });
    expect(await quiet.locator('#total').count()).toBe(0);
    await quiet.click('#play');
    await other.close();
  });

  test('renders on the samples of the plan in an OfflineAudioContext', async () => {
    const { outputFiles } = await build({
      entryPoints: [`${ROOT}examples/play-along/page/band.ts`],
      bundle: true,
      format: 'iife',
      globalName: 'band',
      write: false,
      alias: { '@reedplate/backing': `${ROOT}packages/backing/src/index.ts` },
    });
    await page.addScriptTag({ content: outputFiles[0]?.text ?? '' });
    const plan = [...new Set(eventsBetween(session, 0, 8).map(({ start }) => start))];
    const heard = (await page.evaluate(`(async () => {
      const context = new OfflineAudioContext(1, 44100 * 9, 44100);
      const buffer = context.createBuffer(1, 1, 44100);
      buffer.getChannelData(0)[0] = 1;
      for (const when of ${JSON.stringify(plan)}) {
        band.schedule(context, context.destination, buffer, { gain: 1, when });
      }
      const samples = (await context.startRendering()).getChannelData(0);
      return [...samples.keys()].filter((at) => samples[at] > 0.1).map((at) => at / 44100);
    })()`)) as readonly number[];
    expect(plan.length).toBeGreaterThan(40);
    for (const second of plan) {
      const nearest = Math.min(...heard.map((at) => Math.abs(at - second)));
      expect(nearest).toBeLessThan(0.001);
    }
  });

  test('is at most 250 kB gzipped, all its scripts and styles together', () => {
    const files = readdirSync(join(served.folder, 'assets')).map((file) =>
      readFileSync(join(served.folder, 'assets', file)),
    );
    expect(files.length).toBeGreaterThan(1);
    const sizes = files.map((file) => gzipSync(file).length);
    expect(sizes.reduce((sum, size) => sum + size, 0)).toBeLessThanOrEqual(250_000);
  });

  test('made no error and asked nobody else for anything', () => {
    expect(errors).toEqual([]);
    expect(strangers).toEqual([]);
  });
});
