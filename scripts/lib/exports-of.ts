import ts from 'typescript';
import { workspacePackages } from './packages.mjs';
import { ROOT } from './root.mjs';

/** A name that a package exports. */
export interface Exported {
  readonly name: string;
  readonly isType: boolean;
  /** For the other packages alone: tagged so in its docstring. */
  readonly isInternal: boolean;
  /** The first sentence of its docstring, on one line. */
  readonly summary: string;
}

/** A package and all that its index exports. */
export interface PackageExports {
  readonly name: string;
  readonly dir: string;
  readonly index: string;
  readonly exports: readonly Exported[];
}

/** What every package of the workspace exports, by folder name, as the compiler sees it. */
export function exportsOfPackages(): readonly PackageExports[] {
  const packages = workspacePackages().map(({ dir, path, manifest }) => ({
    name: String(manifest.name),
    dir,
    index: `${path}/src/index.ts`,
  }));
  const { config } = ts.readConfigFile(`${ROOT}tsconfig.docs.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent({ ...config, files: [] }, ts.sys, ROOT);
  const program = ts.createProgram(
    packages.map(({ index }) => index),
    options,
  );
  return packages.map((found) => ({ ...found, exports: exportsOf(program, found.index) }));
}

function exportsOf(program: ts.Program, index: string): readonly Exported[] {
  const checker = program.getTypeChecker();
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
      summary: firstSentence(ts.displayPartsToString(symbol.getDocumentationComment(checker))),
    };
  });
}

/** Up to the first full stop that ends a sentence; links by what they name. */
function firstSentence(comment: string): string {
  const [paragraph = ''] = comment.split('\n\n');
  const line = paragraph
    .replaceAll(/\{@link (\w+)[^}]*\}/gu, '`$1`')
    .replaceAll(/\s+/gu, ' ')
    .trim();
  return /^.*?[.](?= [A-Z`]|$)/u.exec(line)?.[0] ?? line;
}
