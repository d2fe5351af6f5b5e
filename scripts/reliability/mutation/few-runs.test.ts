import type fastCheck from 'fast-check';
import { expect, test } from 'vitest';
import { makeFewRuns } from './few-runs.js';

test.each([
  [undefined, undefined, 100],
  [undefined, 300, 300],
  [20, undefined, 20],
  [20, 300, 20],
  [20, 5, 5],
])('with at most %s cases a property that asks for %s is tried on %i', (most, numRuns, tried) => {
  const fewRuns = makeFewRuns();
  fewRuns.most = most;
  const { default: fc } = fewRuns.module as { default: typeof fastCheck };
  let cases = 0;
  const property = fc.property(fc.integer(), () => {
    cases += 1;
  });
  fc.assert(property, numRuns === undefined ? undefined : { numRuns });
  expect(cases).toBe(tried);
});
