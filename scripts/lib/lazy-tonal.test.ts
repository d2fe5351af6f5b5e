import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, test } from 'vitest';
import { fillLate } from './lazy-tonal.js';
import { ROOT } from './root.mjs';

const { resolve } = createRequire(`${ROOT}packages/pitch/package.json`);
const moduleOf = (name: string): string =>
  readFileSync(resolve(`@tonaljs/${name}`).replace(/\.js$/u, '.mjs'), 'utf8');

describe('lazyTonal', () => {
  test.each(['chord-type', 'scale-type'])('fillLate fills %s inside a function alone', (name) => {
    const late = fillLate(moduleOf(name)) ?? '';
    expect(late).toMatch(/^function fill\(\) \{\ndata_default\.forEach\($/mu);
    expect(late.match(/data_default\.forEach/gu)).toHaveLength(1);
    expect(late.match(/if \(dictionary\.length === 0\) fill\(\);/gu)).toHaveLength(1);
    expect(late).toMatch(/^export \{ all \};$/mu);
  });

  test('says nothing of a text that it does not know, so that the build fails', () => {
    expect(fillLate('var dictionary = [];')).toBeUndefined();
  });
});
