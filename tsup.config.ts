import { existsSync } from 'node:fs';
import { defineConfig, type Options } from 'tsup';

// Run by each package's `build` script, in that package's folder.
const hasCommand = existsSync('src/cli.ts');

const shared: Options = {
  target: 'node20',
  sourcemap: true,
  treeshake: true,
  tsconfig: '../../tsconfig.build.json',
};

const library: Options = {
  ...shared,
  entry: ['src/index.ts'],
  format: ['esm', 'cjs'],
  clean: true,
  dts: { compilerOptions: { types: hasCommand ? ['node'] : [] } },
};

/**
 * The umbrella's library is one file: every package on its way costs Node a search and a read, which
 * together were half of what importing `reedplate` took. Its types still come from the packages.
 */
const umbrella: Options = {
  ...library,
  noExternal: [/^@reedplate\/(?!interchange$)/],
  minifyWhitespace: true,
};

const command: Options = {
  ...shared,
  // A study's workers run a file of their own.
  entry: { cli: 'src/cli.ts', 'study-worker': 'src/study/batch.ts' },
  format: ['esm'],
  banner: { js: '#!/usr/bin/env node' },
  dts: false,
};

export default defineConfig(hasCommand ? [umbrella, command] : [library]);
