import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { workspacePackages } from '../scripts/lib/packages.mjs';
import { ROOT } from '../scripts/lib/root.mjs';
import { IMPORTED_APART } from '../scripts/manifests/package-order.js';

const packages = workspacePackages().map(({ dir, path, manifest }) => ({
  name: manifest.name as string,
  dir,
  index: `${path}/src/index.ts`,
}));

const { config } = ts.readConfigFile(`${ROOT}tsconfig.docs.json`, ts.sys.readFile);
const { options } = ts.parseJsonConfigFileContent({ ...config, files: [] }, ts.sys, ROOT);
const program = ts.createProgram(
  packages.map(({ index }) => index),
  options,
);

const checker = program.getTypeChecker();

/** A name that a package exports. */
interface Exported {
  readonly name: string;
  readonly isType: boolean;
  /** For the other packages alone: tagged so in its docstring. */
  readonly isInternal: boolean;
}

function exportsOf(index: string): readonly Exported[] {
  const source = program.getSourceFile(index);
  const module = source && checker.getSymbolAtLocation(source);
  if (module === undefined) throw new Error(`${index} is no module`);
  return checker.getExportsOfModule(module).map((exported) => {
    const isAlias = (exported.flags & ts.SymbolFlags.Alias) !== 0;
    const symbol = isAlias ? checker.getAliasedSymbol(exported) : exported;
    return {
      name: exported.name,
      isType: (symbol.flags & ts.SymbolFlags.Value) === 0,
      isInternal: symbol.getJsDocTags(checker).some(({ name }) => name === 'internal'),
    };
  });
}

/** A line of a listing: what is internal comes first, types last. */
function listed({ name, isType, isInternal }: Exported): string {
  return `${isInternal ? 'internal ' : ''}${isType ? 'type ' : ''}${name}`;
}

describe('the names that a package exports', () => {
  test.each(packages)('$name: change only on purpose', async ({ dir, index }) => {
    const listing = `${exportsOf(index).map(listed).sort().join('\n')}\n`;
    await expect(listing).toMatchFileSnapshot(`exports/${dir}.txt`);
  });

  test('reedplate: hold all that the other packages export, but for those imported apart and what is internal', () => {
    const umbrella = packages.find(({ dir }) => dir === 'reedplate');
    const inUmbrella = new Set(exportsOf(umbrella?.index ?? '').map(({ name }) => name));
    const exported = packages
      .filter(({ dir }) => !IMPORTED_APART.has(dir))
      .flatMap(({ index }) => exportsOf(index));
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
