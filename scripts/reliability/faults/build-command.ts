import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build, type Plugin } from 'esbuild';
import { ROOT } from '../../lib/root.mjs';

const OUT = `${ROOT}node_modules/.cache/reedplate/faults`;

/** Packages of the workspace from source; the pool of threads from where it is installed. */
const fromSource: Plugin = {
  name: 'from-source',
  setup: ({ onResolve }) => {
    const names = new Set(readdirSync(`${ROOT}packages`));
    // esbuild reads these by the rules of Go, which has no flag u.
    onResolve({ filter: /^@reedplate\/[a-z-]+$/ }, ({ path }) => {
      const name = path.replace('@reedplate/', '');
      return names.has(name) ? { path: `${ROOT}packages/${name}/src/index.ts` } : null;
    });
    onResolve({ filter: /^tinypool$/ }, () => {
      const from = new URL(`file://${ROOT}packages/study/node_modules/tinypool/dist/index.js`);
      return { path: from.href, external: true };
    });
  },
};

/** Builds the command as one file, with the file of a study's workers beside it; gives its path. */
export async function buildCommand(): Promise<string> {
  await build({
    entryPoints: {
      bin: `${ROOT}packages/reedplate/src/bin.ts`,
      'study-worker': `${ROOT}packages/study/src/run/batch.ts`,
    },
    outdir: OUT,
    outExtension: { '.js': '.js' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    plugins: [fromSource],
    banner: {
      js: "import { createRequire as makeRequire } from 'node:module'; const require = makeRequire(import.meta.url);",
    },
    logLevel: 'error',
  });
  return fileURLToPath(new URL(`file://${OUT}/bin.js`));
}
