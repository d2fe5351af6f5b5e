import { performance } from 'node:perf_hooks';
import { makeChart } from '@reedplate/form';
import { composeLine } from '@reedplate/practice';
import { brokenIn } from '../../packages/practice/src/compose/broken-in.fixture.js';

// Composes many choruses, and looks in each for what must hold, from its notes alone.
//   npx tsx --tsconfig tsconfig.json scripts/practice/draw-many.ts [10000]
const COUNT = Number(process.argv[2] ?? 10_000);
const FORMS = ['basic', 'quick-change', 'jazz', 'minor'] as const;
const LEVELS = ['natural', 'bends', 'overbends'] as const;
const KEYS = [
  ['G', 'C'],
  ['A', 'D'],
  ['Bb', 'Eb'],
] as const;

let broken = 0;
const began = performance.now();
for (let seed = 1; seed <= COUNT; seed += 1) {
  const form = FORMS[seed % FORMS.length] ?? 'basic';
  const [key, harp] = KEYS[seed % KEYS.length] ?? KEYS[0];
  const chart = makeChart(form, form === 'minor' ? `${key}m` : key);
  const asked = { leap: 5 + (seed % 8), resolve: 1 + (seed % 3) };
  const level = LEVELS[Math.floor(seed / 7) % LEVELS.length] ?? 'bends';
  for (const fault of brokenIn(composeLine(chart, harp, { seed, level, ...asked }), chart, asked)) {
    broken += 1;
    console.error(`seed ${seed}, ${form} in ${key}, ${level}: ${fault}`);
  }
}
const each = (performance.now() - began) / COUNT;
console.log(`${COUNT} choruses, ${broken} broken constraints, ${each.toFixed(1)} ms each`);
process.exitCode = broken === 0 ? 0 : 1;
