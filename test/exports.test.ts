import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Exported, exportsOfPackages } from '../scripts/lib/exports-of.js';
import { ROOT } from '../scripts/lib/root.mjs';
import { NODE_PACKAGES } from '../scripts/manifests/package-order.js';
import { isLeftOut } from '../scripts/umbrella/is-left-out.js';
import { LEFT_OUT } from '../scripts/umbrella/left-out.js';
import { MOST_NAMES, namesPage } from '../scripts/umbrella/names-page.js';

const packages = exportsOfPackages();

/** A line of a listing: what is internal comes first, types last. */
function listed({ name, isType, isInternal }: Exported): string {
  return `${isInternal ? 'internal ' : ''}${isType ? 'type ' : ''}${name}`;
}

describe('the names that a package exports', () => {
  test.each(packages)('$name: change only on purpose', async ({ dir, exports }) => {
    const listing = `${exports.map(listed).sort().join('\n')}\n`;
    await expect(listing).toMatchFileSnapshot(`exports/${dir}.txt`);
  });

  test('reedplate: hold all that the other packages export, but for what is internal or left out', () => {
    const umbrella = packages.find(({ dir }) => dir === 'reedplate');
    const inUmbrella = new Set(umbrella?.exports.map(({ name }) => name));
    const exported = packages
      .filter(({ dir }) => dir !== 'reedplate' && !NODE_PACKAGES.has(dir))
      .flatMap(({ dir, exports }) => exports.map((found) => ({ dir, found })));
    expect(exported.filter(({ found }) => found.isInternal).length).toBeGreaterThan(10);
    expect(
      exported
        .filter(({ dir, found }) => isLeftOut(dir, found) === inUmbrella.has(found.name))
        .map(({ found }) => listed(found)),
    ).toEqual([]);
  });

  test('reedplate: leave out only what a package exports', () => {
    const exported = new Map(packages.map(({ dir, exports }) => [dir, exports]));
    const gone = Object.entries(LEFT_OUT).flatMap(([dir, names]) =>
      names.filter((name) => !exported.get(dir)?.some((found) => found.name === name)),
    );
    expect(gone).toEqual([]);
  });

  test(`reedplate: are at most ${MOST_NAMES} and docs/names.md lists them as they are`, () => {
    const { page, count } = namesPage(packages);
    expect(count).toBeLessThanOrEqual(MOST_NAMES);
    expect(packages.find(({ dir }) => dir === 'reedplate')?.exports.length).toBe(count);
    expect(readFileSync(`${ROOT}docs/names.md`, 'utf8')).toBe(page);
  });
});

describe('the tables that a package exports', () => {
  test.each(packages)('$name: are frozen, and all that they hold', async ({ index }) => {
    const exported: Record<string, unknown> = await import(index);
    const loose = Object.entries(exported).filter(([, value]) => !isDeeplyFrozen(value));
    expect(loose.map(([name]) => name)).toEqual([]);
  });
});

function isDeeplyFrozen(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return true;
  return Object.isFrozen(value) && Object.values(value).every(isDeeplyFrozen);
}
