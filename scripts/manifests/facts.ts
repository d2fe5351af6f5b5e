import { existsSync, readdirSync, readFileSync } from 'node:fs';
import ts from 'typescript';
import type { WorkspacePackage } from '../lib/packages.mjs';

/** Tests, their fixtures and the values that laws are tried on; nothing of either is built or published. */
const TEST_FILE = /\.(?:test|test-d|fixture)\.ts$|\/arbitraries\.ts$/u;

/** A source file of a package and the modules it imports. */
export interface SourceFacts {
  /** Path from the package's folder. */
  readonly file: string;
  readonly imports: readonly string[];
  readonly isTest: boolean;
}

/** All that the rules look at in a package. */
export interface PackageFacts {
  readonly dir: string;
  readonly manifest: Readonly<Record<string, unknown>>;
  readonly sources: readonly SourceFacts[];
  readonly hasSchemas: boolean;
  readonly hasCommand: boolean;
  /** Text of files that must be there; undefined where one is not. */
  readonly licence: string | undefined;
  readonly readme: string | undefined;
  readonly thirdPartyLicences: string | undefined;
}

/** Reads what the rules need to know of a package. */
export function packageFacts({ dir, path, manifest }: WorkspacePackage): PackageFacts {
  const textOf = (file: string): string | undefined =>
    existsSync(`${path}/${file}`) ? readFileSync(`${path}/${file}`, 'utf8') : undefined;
  const sources = existsSync(`${path}/src`)
    ? readdirSync(`${path}/src`, { recursive: true, encoding: 'utf8' })
    : [];
  return {
    dir,
    manifest,
    sources: sources
      .filter((file) => file.endsWith('.ts'))
      .sort()
      .map((file) => sourceFacts(`src/${file}`, readFileSync(`${path}/src/${file}`, 'utf8'))),
    hasSchemas: existsSync(`${path}/schemas`),
    hasCommand: existsSync(`${path}/src/bin.ts`),
    licence: textOf('LICENSE'),
    readme: textOf('README.md'),
    thirdPartyLicences: textOf('THIRD-PARTY-LICENSES.md'),
  };
}

/** The imports of a source text, static, dynamic and re-exporting. */
export function sourceFacts(file: string, text: string): SourceFacts {
  const { importedFiles } = ts.preProcessFile(text, true, true);
  return {
    file,
    imports: importedFiles.map(({ fileName }) => fileName),
    isTest: TEST_FILE.test(file),
  };
}
