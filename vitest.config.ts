import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { OwnTestsFirst } from './scripts/lib/own-tests-first.js';

const packages = fileURLToPath(new URL('./packages/', import.meta.url));

/** Share of branches that tests take, in percent, in every package by itself. */
const BRANCHES = 95;
const held = readdirSync(packages).map((name) => [
  `packages/${name}/src/**`,
  { branches: BRANCHES },
]);

export default defineConfig({
  resolve: {
    alias: [
      { find: /^@reedplate\/([a-z-]+)$/, replacement: `${packages}$1/src/index.ts` },
      { find: /^reedplate$/, replacement: `${packages}reedplate/src/index.ts` },
    ],
  },
  test: {
    // A loaded machine is slow, and nothing here asserts a time.
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // All cores: without it a machine of two works on one.
    maxWorkers: '100%',
    sequence: { sequencer: OwnTestsFirst },
    setupFiles: ['test/seed.setup.ts'],
    include: [
      'packages/*/{src,test}/**/*.test.ts',
      'test/**/*.test.ts',
      'scripts/**/*.test.ts',
      'examples/**/*.test.ts',
    ],
    coverage: {
      provider: 'v8',
      include: ['packages/*/src/**/*.ts'],
      exclude: [
        '**/*.test.ts',
        '**/*.test-d.ts',
        '**/*.fixture.ts',
        '**/arbitraries.ts',
        '**/index.ts',
      ],
      reporter: ['text-summary', 'json-summary', 'html'],
      thresholds: {
        statements: 95,
        branches: BRANCHES,
        functions: 95,
        lines: 95,
        ...Object.fromEntries(held),
      },
    },
  },
});
