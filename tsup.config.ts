import { existsSync } from 'node:fs';
import { defineConfig, type Options } from 'tsup';
import { lazyTonal } from './scripts/lib/lazy-tonal.js';
import { midiWriter } from './scripts/lib/midi-writer.js';
import { nodeByImport } from './scripts/lib/node-by-import.js';
import { pureFreezing } from './scripts/lib/pure-freezing.js';

// Run by each package's `build` script, in that package's folder.
const hasCommand = existsSync('src/bin.ts');
const hasWorker = existsSync('src/run/batch.ts');
const needsNode =
  existsSync('src/run') || existsSync('src/main.ts') || existsSync('src/open-file.ts');

const shared: Options = {
  target: 'node20',
  sourcemap: true,
  treeshake: true,
  removeNodeProtocol: false,
  tsconfig: '../../tsconfig.build.json',
  esbuildPlugins: [lazyTonal, midiWriter, nodeByImport, pureFreezing],
  // What is only counted out is left out of a program that does not use it. Freezing is not among these, since
  // a statement that freezes would go: `pureFreezing` marks the others.
  pure: ['Object.keys', 'String.raw'],
};

const library: Options = {
  ...shared,
  entry: ['src/index.ts'],
  format: ['esm', 'cjs'],
  clean: true,
  dts: { compilerOptions: { types: needsNode ? ['node'] : [] } },
};

const command: Options = {
  ...shared,
  entry: ['src/bin.ts'],
  format: ['esm'],
  banner: { js: '#!/usr/bin/env node' },
  dts: false,
};

// A study's workers run a file of their own.
const worker: Options = {
  ...shared,
  entry: { 'study-worker': 'src/run/batch.ts' },
  format: ['esm'],
  dts: false,
};

export default defineConfig([
  library,
  ...(hasCommand ? [command] : []),
  ...(hasWorker ? [worker] : []),
]);
