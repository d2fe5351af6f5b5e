import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { ROOT } from '../../lib/root.mjs';
import { findMutants } from './find-mutants.js';
import { prepareTrials } from './try-mutants.js';

const FOLDER = 'scripts/reliability/mutation/fixtures';
const FILE = `${FOLDER}/larger.ts`;
const TESTS = `${FOLDER}/larger.tests.ts`;
const mutants = findMutants(FILE, readFileSync(ROOT + FILE, 'utf8')).map((mutant) => ({
  ...mutant,
  file: FILE,
}));

test('tryMutant names the test that fails; says how many files meet a change that none finds', async () => {
  const { tests, tryMutant } = await prepareTrials([TESTS], mutants);
  expect(tests).toBe(3);
  const verdicts: Record<string, unknown> = {};
  for (const [at, { line, text }] of mutants.entries()) {
    const verdict = await tryMutant(at);
    verdicts[`${line} ${text}`] = verdict.by ?? verdict.reached;
  }
  const first = `${TESTS}: larger > larger of 1 and 2 is the second`;
  expect(verdicts).toEqual({
    '4 >=': 1,
    '4 <=': first,
    '4 true': first,
    '4 false': `${TESTS}: larger > larger of 2 and 1 is the first`,
    '7 -': `${TESTS}: TWO is known to those who wait`,
    '7 2': `${TESTS}: TWO is known to those who wait`,
    '10 /': 0,
    '10 3': 0,
  });
});

test('prepareTrials wants tests that pass with nothing changed', async () => {
  const failing = prepareTrials([`${FOLDER}/failing.tests.ts`], []);
  await expect(failing).rejects.toThrow('a test that fails fails with nothing changed');
});
