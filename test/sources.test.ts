import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { BIBLIOGRAPHY } from './sources/bibliography.js';
import { collectCitations, mismatches } from './sources/collect.js';
import { sourcesPage } from './sources/page.js';
import type { Source } from './sources/source.js';

const ROOT = fileURLToPath(new URL('../', import.meta.url));
const SOURCES: readonly Source[] = BIBLIOGRAPHY;
const { citations, withoutSource } = collectCitations(ROOT);

describe('the sources of the tests of facts', () => {
  test('every test of facts names a source', () => {
    expect(withoutSource).toEqual([]);
  });

  test('every source that is named is in the bibliography, and every one there is named', () => {
    const ids = SOURCES.map(({ id }) => id);
    expect(mismatches(citations, ids)).toEqual({ unknown: [], unused: [] });
  });

  test('a source that is in no bibliography, one that no test names, and a test without one are found', () => {
    const root = mkdtempSync(`${tmpdir()}/sources-`);
    mkdirSync(`${root}/packages/horn/src`, { recursive: true });
    writeFileSync(
      `${root}/packages/horn/src/horn.published.test.ts`,
      "published('nowhere', 'a fact', () => {\n  test('is checked', () => {});\n});\ntest('rests on nothing', () => {});\n",
    );
    const read = collectCitations(root);
    expect(read.citations.map(({ source, facts }) => [source, facts])).toEqual([
      ['nowhere', 'a fact'],
    ]);
    expect(read.withoutSource).toEqual(['packages/horn/src/horn.published.test.ts:4']);
    expect(mismatches(read.citations, ['oeis-layout'])).toEqual({
      unknown: ['nowhere'],
      unused: ['oeis-layout'],
    });
  });

  test('the bibliography has no id twice, and an address or a place for each publication', () => {
    expect(new Set(SOURCES.map(({ id }) => id)).size).toBe(SOURCES.length);
    for (const { id, kind, title, address, where } of SOURCES) {
      expect(id).toMatch(/^[a-z0-9]+(?:-[a-z0-9]+)*$/u);
      expect(title).not.toBe('');
      const isOwn = ['practice', 'memory', 'computed', 'program'].includes(kind);
      if (!isOwn && kind !== 'wiki') expect(address ?? where, id).toBeTruthy();
    }
  });

  test('docs/sources.md is what bibliography and tests give now; if not, run "npm run sources"', () => {
    const page = readFileSync(`${ROOT}docs/sources.md`, 'utf8');
    expect(page).toBe(sourcesPage(SOURCES, citations));
  });
});
