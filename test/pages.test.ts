import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { VERBS } from '../packages/cli/src/verb-table.js';
import { ROOT } from '../scripts/lib/root.mjs';

const read = (page: string): string => readFileSync(ROOT + page, 'utf8');
const PACKAGES = readdirSync(`${ROOT}packages`);
const OF_PACKAGES = PACKAGES.map((dir) => `packages/${dir}/README.md`);
const PAGES = [
  'README.md',
  'DEVELOPERS.md',
  'SECURITY.md',
  ...readdirSync(`${ROOT}docs`).flatMap((file) => (file.endsWith('.md') ? [`docs/${file}`] : [])),
  ...readdirSync(`${ROOT}examples`).map((dir) => `examples/${dir}/README.md`),
].filter((page) => existsSync(ROOT + page));

/** Where the links of a page lead to; code is no prose. */
function linksOf(page: string): readonly string[] {
  const prose = read(page)
    .replace(/^```[\s\S]*?^```$/gmu, '')
    .replace(/`[^`\n]*`/gu, '');
  return [...prose.matchAll(/\]\(([^)\s]+)\)/gu)].map(([, to = '']) => to);
}

const isElsewhere = (link: string): boolean => /^(?:https?:|mailto:|#)/u.test(link);

describe('the pages', () => {
  test.each(PAGES)('%s links to pages that are there', (page) => {
    const missing = linksOf(page)
      .filter((link) => !isElsewhere(link))
      .filter((link) => !existsSync(join(ROOT, dirname(page), link.replace(/#.*$/u, ''))));
    expect(missing).toEqual([]);
  });

  // A registry shows the README of a package alone: what lies outside of it cannot be reached from there.
  test.each(OF_PACKAGES)('%s links to nothing outside its package', (page) => {
    expect(linksOf(page).filter((link) => link.startsWith('../'))).toEqual([]);
    const within = linksOf(page).filter((link) => !isElsewhere(link));
    expect(within.filter((link) => !existsSync(join(ROOT, dirname(page), link)))).toEqual([]);
  });

  test('README.md names every verb of the command once, and every package', () => {
    const table = read('README.md').split('| to know | verbs |')[1]?.split('\n\n')[0] ?? '';
    const named = [...table.matchAll(/`([a-z]+)`/gu)].map(([, verb]) => verb);
    expect(named.sort()).toEqual(VERBS.map(({ name }) => name).sort());
    for (const dir of PACKAGES)
      expect(read('README.md')).toMatch(
        new RegExp(`\\]\\(packages/${dir}(?:/README\\.md)?\\)`, 'u'),
      );
  });

  test('the README of cli has a row for every verb', () => {
    const page = read('packages/cli/README.md');
    const rows = [...page.matchAll(/^\| `([a-z]+)[ `]/gmu)].map(([, verb]) => verb);
    expect(rows.sort()).toEqual(VERBS.map(({ name }) => name).sort());
  });
});
