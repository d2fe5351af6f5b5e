import { readFileSync, writeFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { build } from 'esbuild';
import { ROOT } from './lib/root.mjs';

// What a bundler makes of the built library, for a browser: sizes with budgets, in docs/performance.md.
// With --write the table is written there; without, it is compared, and a budget overrun fails.

/** Names in the first rooms that came after them: the sound of a band. */
const CAME_AFTER = new Set(['renderBand']);

/** @type {readonly { what: string, code: string, budget: number | undefined }[]} budget in kB, minified */
const SUBJECTS = [
  { what: '`midi`', code: "export { midi } from 'reedplate'", budget: 20 },
  {
    what: '`pickHarps`, `targetsOf`, `makeHarp`, `makeChart`, `parseForm`',
    code: "export { pickHarps, targetsOf, makeHarp, makeChart, parseForm } from 'reedplate'",
    budget: 90,
  },
  {
    what: 'the first rooms: all but pictures, listening, phrases and what came after them',
    code: namesOf([
      'backing',
      'chord-tone',
      'form',
      'interchange',
      'layout',
      'line',
      'pitch',
      'playability',
      'position',
      'tab',
    ]),
    // The aim is 310: docs/performance.md says what is left. Keys, ladders and swing of a band, repeats of ABC and readings of takes took 6 of these.
    budget: 398,
  },
  { what: 'everything', code: "export * from 'reedplate'", budget: undefined },
];

/**
 * A program that takes every name of `reedplate` from some rooms, and practice lines.
 *
 * @param {readonly string[]} rooms
 */
function namesOf(rooms) {
  const index = readFileSync(`${ROOT}packages/reedplate/src/index.ts`, 'utf8');
  const taken = rooms.flatMap((room) => {
    const [, names = ''] =
      new RegExp(`export \\{([^}]*)\\} from '@reedplate/${room}'`, 'u').exec(index) ?? [];
    const values = names.split(',').map((name) => name.trim());
    return values.filter(
      (name) => name !== '' && !name.startsWith('type ') && !CAME_AFTER.has(name),
    );
  });
  return `export { ${[...taken, 'practiceLine'].join(', ')} } from 'reedplate'`;
}

/** A size in the page may differ from a fresh one by so much, before the page counts as stale. */
const DRIFT = 0.05;

const PAGE = `${ROOT}docs/performance.md`;
const BEGIN = '<!-- bundle sizes: npm run bundle-size -- --write -->';
const END = '<!-- end of bundle sizes -->';

/** @param {string} code */
async function sizeOf(code) {
  const { outputFiles } = await build({
    stdin: { contents: code, resolveDir: ROOT },
    bundle: true,
    // The paths of ours lead to the sources, and a user has what was built.
    tsconfigRaw: '{}',
    minify: true,
    format: 'esm',
    platform: 'browser',
    write: false,
    logLevel: 'error',
  });
  const bytes = outputFiles[0]?.contents ?? new Uint8Array();
  return { min: bytes.length / 1000, gz: gzipSync(bytes).length / 1000 };
}

const rows = [];
let isOver = false;
for (const { what, code, budget } of SUBJECTS) {
  const { min, gz } = await sizeOf(code);
  if (budget !== undefined && min > budget) {
    console.error(`${what} bundles to ${min.toFixed(1)} kB, over its budget of ${budget}`);
    isOver = true;
  }
  rows.push({ what, min, gz, budget });
}
const table = [
  '| import of | min (kB) | gzipped (kB) | budget (kB min) |',
  '|---|---:|---:|---:|',
  ...rows.map(
    ({ what, min, gz, budget }) =>
      `| ${what} | ${min.toFixed(1)} | ${gz.toFixed(1)} | ${budget ?? ''} |`,
  ),
].join('\n');
console.log(table);

const page = readFileSync(PAGE, 'utf8');
const begin = page.indexOf(BEGIN) + BEGIN.length;
const end = page.indexOf(END);
if (end === -1) throw new Error(`docs/performance.md lacks ${BEGIN} … ${END}`);
if (process.argv.includes('--write')) {
  writeFileSync(PAGE, `${page.slice(0, begin)}\n${table}\n${page.slice(end)}`);
} else {
  const shown = [...page.slice(begin, end).matchAll(/\| ([\d.]+) \| [\d.]+ \| \d* \|/gu)];
  const isStale =
    shown.length !== rows.length ||
    rows.some(({ min }, at) => Math.abs(Number(shown[at]?.[1]) - min) > DRIFT * min);
  if (isStale) console.error('docs/performance.md is stale: npm run bundle-size -- --write');
  process.exitCode = isOver || isStale ? 1 : 0;
}
