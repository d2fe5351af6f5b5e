import { writeFileSync } from 'node:fs';
import { findPhrases, learnPhrases } from '@reedplate/practice';
import { ROOT } from '../lib/root.mjs';

// Learns the weights of composed lines from the catalogue of phrases, and writes them as data. A test says when
// the catalogue has changed: npx tsx --tsconfig tsconfig.json scripts/practice/learn-weights.ts
const FILE = `${ROOT}packages/practice/src/compose/learned-weights.ts`;

function modelText(name: string, mode: 'major' | 'minor'): string {
  const { transitions, leaps } = learnPhrases(findPhrases(), mode);
  const tenths = (weights: readonly number[]): string =>
    weights.map((weight) => weight.toFixed(1).replace('.0', '')).join(' ');
  return `/** Learned from the phrases in ${mode}. */
export const ${name}: LearnedWeights = /* @__PURE__ */ readWeights(
  \`
${transitions.map(tenths).join('\n')}
\`,
  '${tenths(leaps)}',
);
`;
}

writeFileSync(
  FILE,
  `import { type LearnedWeights, readWeights } from './read-weights.js';

// Written by scripts/practice/learn-weights.ts from the catalogue of phrases: how often one degree follows another, a row for
// each degree that comes first, from the tonic up by semitones; then how often melodies leap by 0, 1, 2 … semitones.

${modelText('LEARNED_MAJOR', 'major')}
${modelText('LEARNED_MINOR', 'minor')}`,
);
