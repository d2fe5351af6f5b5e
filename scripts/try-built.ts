import { strictEqual } from 'node:assert';
import { spawnSync } from 'node:child_process';
import { CALLS } from '../test/surface/calls.fixture.js';
import * as everything from '../test/surface/everything.fixture.js';
import { looseIn } from '../test/surface/loose-in.fixture.js';
import { UNCAUGHT } from './built/uncaught.js';
import { ROOT } from './lib/root.mjs';

// Tries what bundling could break, on the built packages: tables and results are frozen, and an error that
// nobody catches prints short. To be run with tsconfig.build.json, under which packages are what is built.

const MOST_BYTES = 2000;

strictEqual(
  new URL(import.meta.resolve('@reedplate/pitch')).pathname.endsWith('/dist/index.js'),
  true,
  'run with --tsconfig tsconfig.build.json',
);

const faults = [...(await looseResults()), ...looseTables(), ...UNCAUGHT.flatMap(longPrints)];
if (faults.length > 0) throw new Error(faults.join('\n'));

/** What the functions of the packages give that can still be written to. */
async function looseResults(): Promise<readonly string[]> {
  const functions: ReadonlyMap<string, unknown> = new Map(Object.entries(everything));
  const loose: string[] = [];
  for (const [name, given] of Object.entries(CALLS)) {
    const call = functions.get(name) as (...given: readonly unknown[]) => unknown;
    const paths = looseIn(await call(...given));
    loose.push(...paths.map((path) => `${name}: ${path} is not frozen`));
  }
  console.log(
    `${Object.keys(CALLS).length} functions called, results frozen: ${loose.length === 0}`,
  );
  return loose;
}

/** The tables of the packages that can still be written to. */
function looseTables(): readonly string[] {
  const tables = Object.entries(everything).filter(([, value]) => typeof value === 'object');
  const loose = tables.flatMap(([name, table]) => looseIn(table, name));
  console.log(`${tables.length} tables looked at, frozen: ${loose.length === 0}`);
  return loose.map((path) => `${path} is not frozen`);
}

/** What Node prints of a program that ends with an error of ours, where it is too long or is none. */
function longPrints({ packageName, code, program }: (typeof UNCAUGHT)[number]): readonly string[] {
  const programs = {
    module: `import * as it from '${packageName}'; ${program}`,
    commonjs: `const it = require('${packageName}'); ${program}`,
  };
  return Object.entries(programs).flatMap(([type, text]) => {
    const words = [`--input-type=${type}`, '-e', text];
    const { stderr } = spawnSync(process.execPath, words, { cwd: ROOT, encoding: 'utf8' });
    const bytes = Buffer.byteLength(stderr);
    console.log(`${packageName} (${type}) prints ${bytes} bytes for ${code}`);
    if (!stderr.includes(code))
      return [`${packageName} (${type}) does not throw ${code}:\n${stderr}`];
    return bytes < MOST_BYTES ? [] : [`${packageName} (${type}) prints ${bytes} bytes:\n${stderr}`];
  });
}
