import * as reedplate from 'reedplate';
import { expect, test } from 'vitest';
import { READERS } from './readers.js';
import { SEEDS } from './seeds.js';

/** What takes the text or the file of a stranger, by how it is named. */
const READS = /^(?:read|parse|detect|recogni[sz]e)[A-Z]/u;
/** The other spelling of one that is in the table. */
const SAME = ['recognizeForm'];

test('every reader and parser that the umbrella exports is fuzzed', () => {
  const exported = Object.keys(reedplate).filter((name) => READS.test(name));
  const tried = READERS.map(({ name }) => name);
  expect(exported.length).toBeGreaterThan(15);
  expect(exported.filter((name) => !tried.includes(name) && !SAME.includes(name))).toEqual([]);
});

test('every reader is in the table once, with seeds', () => {
  const names = READERS.map(({ name }) => name).sort();
  expect(names).toEqual([...new Set(names)]);
  expect(names).toEqual(Object.keys(SEEDS).sort());
});

test.each(READERS)('$name is measured with at least twenty patterns', ({ patterns }) => {
  expect(new Set(patterns.map(({ name }) => name)).size).toBeGreaterThanOrEqual(20);
});
