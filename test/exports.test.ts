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

/** Names a package exports, each with what it is; types come last. */
function exportsOf(index: string): string[] {
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(index);
  const module = source && checker.getSymbolAtLocation(source);
  if (module === undefined) throw new Error(`${index} is no module`);
  const names = checker.getExportsOfModule(module).map((symbol) => {
    const isAlias = (symbol.flags & ts.SymbolFlags.Alias) !== 0;
    const { flags } = isAlias ? checker.getAliasedSymbol(symbol) : symbol;
    return `${(flags & ts.SymbolFlags.Value) === 0 ? 'type ' : ''}${symbol.name}`;
  });
  return names.sort();
}

describe('the names that a package exports', () => {
  test.each(packages)('$name: change only on purpose', async ({ dir, index }) => {
    const listing = `${exportsOf(index).join('\n')}\n`;
    await expect(listing).toMatchFileSnapshot(`exports/${dir}.txt`);
  });

  test('reedplate: hold all that the other packages export, but for those imported apart', () => {
    const umbrella = packages.find(({ dir }) => dir === 'reedplate');
    const inUmbrella = new Set(exportsOf(umbrella?.index ?? ''));
    const missing = packages
      .filter(({ dir }) => !IMPORTED_APART.has(dir))
      .flatMap(({ index }) => exportsOf(index))
      .filter((name) => !inUmbrella.has(name));
    expect(missing).toEqual([]);
  });
});
