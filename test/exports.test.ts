import { describe, expect, test } from 'vitest';
import { type Exported, exportsOfPackages } from '../scripts/lib/exports-of.js';
import { NODE_PACKAGES } from '../scripts/manifests/package-order.js';

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

  test('reedplate: hold all that the other packages export, but for those imported apart and what is internal', () => {
    const umbrella = packages.find(({ dir }) => dir === 'reedplate');
    const inUmbrella = new Set(umbrella?.exports.map(({ name }) => name));
    const exported = packages
      .filter(({ dir }) => !NODE_PACKAGES.has(dir))
      .flatMap(({ exports }) => exports);
    expect(exported.filter(({ isInternal }) => isInternal).length).toBeGreaterThan(10);
    expect(
      exported.filter(({ name, isInternal }) => isInternal === inUmbrella.has(name)).map(listed),
    ).toEqual([]);
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
