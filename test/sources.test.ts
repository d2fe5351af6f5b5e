import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { BIBLIOGRAPHY } from './sources/bibliography.js';
import { collectCitations } from './sources/collect.js';
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
    const named = new Set(citations.map(({ source }) => source));
    const known = new Set(SOURCES.map(({ id }) => id));
    expect([...named].filter((id) => !known.has(id))).toEqual([]);
    expect([...known].filter((id) => !named.has(id))).toEqual([]);
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
