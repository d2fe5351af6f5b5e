import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { extname, join, normalize } from 'node:path';
import { build } from 'vite';
import { pageConfig } from './page-config.mjs';

/** The browser that pages are tried in, where there is one. */
export const CHROMIUM = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
].find((path) => existsSync(path));

const TYPES: ReadonlyMap<string, string> = new Map([
  ['.html', 'text/html'],
  ['.js', 'text/javascript'],
  ['.css', 'text/css'],
  ['.svg', 'image/svg+xml'],
]);

/** A page that was built and is served. */
export interface ServedPage {
  readonly address: string;
  readonly folder: string;
  readonly close: () => void;
}

/** Builds the page to play along with from source and serves it on this machine. */
export async function servePage(): Promise<ServedPage> {
  const folder = mkdtempSync(join(tmpdir(), 'play-along-'));
  const outDir = join(folder, 'page');
  await build(pageConfig({ outDir, fromSource: true }));
  const server = createServer(({ url = '/' }, answer) => {
    const path = normalize(new URL(url, 'http://page').pathname);
    const file = join(outDir, path.endsWith('/') ? `${path}index.html` : path);
    if (!existsSync(file)) {
      answer.writeHead(404).end();
      return;
    }
    answer.writeHead(200, {
      'content-type': TYPES.get(extname(file)) ?? 'application/octet-stream',
    });
    answer.end(readFileSync(file));
  });
  await new Promise<void>((resolve) => server.listen(0, resolve));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://localhost:${port}/`,
    folder: outDir,
    close: () => {
      server.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** What a browser is started with, so that a file of sound is its microphone. */
export function microphoneArguments(wav: string): readonly string[] {
  return [
    '--no-sandbox',
    '--use-fake-device-for-media-stream',
    '--use-fake-ui-for-media-stream',
    `--use-file-for-fake-audio-capture=${wav}%noloop`,
  ];
}

/** Watches the audio clock of a page: when sounds are set to begin, and which bar is lit at each frame. */
export const WATCH = `
  window.watched = { starts: [], frames: [] };
  const Usual = window.AudioContext;
  window.AudioContext = class extends Usual {
    constructor(...given) { super(...given); window.watched.context = this; }
  };
  const start = AudioBufferSourceNode.prototype.start;
  AudioBufferSourceNode.prototype.start = function (when, ...rest) {
    window.watched.starts.push(when);
    return start.call(this, when, ...rest);
  };
  const frame = () => {
    const { context, frames } = window.watched;
    if (context) frames.push([context.currentTime, document.getElementById('bar').textContent]);
    requestAnimationFrame(frame);
  };
  addEventListener('DOMContentLoaded', () => requestAnimationFrame(frame));
`;
