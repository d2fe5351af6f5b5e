import { build } from './lib/build.mjs';
import { unlessPassed } from './lib/cache.mjs';
import { install } from './lib/install.mjs';
import { run } from './lib/run.mjs';
import { countTests, forgetTests, runTests } from './lib/run-tests.mjs';
import { runSteps } from './lib/steps.mjs';
import { tool } from './lib/tools.mjs';

/** @type {import('./lib/steps.mjs').Step} */
const checkOutside = [
  "check the files we write with other people's readers",
  () => run('npm', ['run', '--silent', 'check-outside']),
];

/** @type {import('./lib/steps.mjs').Step} */
const installChromium = [
  'install Chromium, in which pictures are looked at',
  () => run('bash', ['scripts/browser/install-chromium.sh']),
];

const CODE = /\.(?:[cm]?[tj]s|json|md|yaml)$/u;
const EXPRESSIONS = /^(?:packages\/[^/]+\/src\/(?!.*\.test\.ts$)|scripts\/regular-expressions)/u;
const PACKAGES = /^(?:packages|scripts)\/|^(?:package\.json|pnpm-lock\.yaml)$/u;
const SHIPPED =
  /^packages\/(?!.*\.test\.ts$)|^(?:scripts|test\/consumer)\/|^(?:pnpm-lock\.yaml|tsup\.config\.ts)$/u;
const BUILT =
  /^packages\/(?!.*\.test\.ts$)|^(?:scripts|test\/surface)\/|^(?:pnpm-lock\.yaml|tsup\.config\.ts)$/u;

const RECIPES = /^(?:packages\/(?:pitch|line|form|layout|position)|scripts)\/|^DEVELOPERS\.md$/u;

/** @type {import('./lib/steps.mjs').Step} */
const compareRuntimes = [
  'compare what other runtimes answer',
  unlessPassed('runtimes', SHIPPED, () => run('node', ['scripts/runtimes/compare.mjs'])),
];

forgetTests();
const passed = await runSteps([
  ['install', install],
  ['build', build],
  ['try what is built', unlessPassed('built', BUILT, tryBuilt)],
  ['make the examples of the documentation into tests', () => script('generate-doc-tests')],
  [
    'check types of source, tests, examples and scripts',
    unlessPassed('types', CODE, () => script('check-types')),
  ],
  [
    'check format and lint',
    unlessPassed('lint', /./u, () => tool('biome', ['check', '--error-on-warnings'])),
  ],
  [
    'check manifests and imports',
    unlessPassed('manifests', PACKAGES, () => script('check-manifests')),
  ],
  [
    'look for regular expressions that a text can make slow',
    unlessPassed('regular-expressions', EXPRESSIONS, () => script('regular-expressions')),
  ],
  [
    'check licences of what is taken in',
    unlessPassed('licences', PACKAGES, () => script('third-party-licences', '--check')),
  ],
  [
    'inspect, install and use what would be published',
    unlessPassed('packed', SHIPPED, () => script('check-packed')),
  ],
  [
    'follow the recipes of DEVELOPERS.md',
    unlessPassed('recipes', RECIPES, () => script('follow-recipes')),
  ],
  [
    'hold bundles to their budgets',
    unlessPassed('bundles', SHIPPED, () => run('node', ['scripts/bundle-size.mjs'])),
  ],
  // Installs packages of the system and other runtimes, so only where a machine is there for that.
  ...(process.env.CI === 'true' ? [checkOutside, compareRuntimes, installChromium] : []),
  ['run the tests', runTests],
]);
process.exitCode = passed ? 0 : 1;

// The last line of all counts the tests, if they were reached.
const count = countTests();
if (count !== undefined) console.log(count);

/** Packages by name are what is built under this configuration, and their sources under the usual one. */
function tryBuilt() {
  tool('tsx', ['--tsconfig', 'tsconfig.build.json', 'scripts/try-built.ts']);
}

/**
 * Runs one of the scripts beside this one that are written in TypeScript.
 *
 * @param {string} name
 * @param {readonly string[]} args
 */
function script(name, ...args) {
  tool('tsx', [`scripts/${name}.ts`, ...args]);
}
