import { posix } from 'node:path';
import type { PackageFacts, SourceFacts } from './facts.js';
import { namesUnder, type Rule } from './manifest-rules.js';
import { NODE_PACKAGES } from './package-order.js';

/** What tests may import beside their package and its dependencies. */
const TEST_TOOLS: readonly string[] = ['vitest', 'fast-check', 'ajv'];

interface Import {
  readonly file: string;
  readonly isTest: boolean;
  readonly specifier: string;
  /** The package imported from: `@scope/name` of `@scope/name/path`. */
  readonly name: string;
}

const importsOf = ({ sources }: PackageFacts): readonly Import[] =>
  sources.flatMap(({ file, isTest, imports }: SourceFacts) =>
    imports.map((specifier) => ({ file, isTest, specifier, name: packageNameOf(specifier) })),
  );

/** The package imported from: `@scope/name` of `@scope/name/path`. */
export function packageNameOf(specifier: string): string {
  return specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');
}

const isRelative = ({ specifier }: Import): boolean => specifier.startsWith('.');
const isNode = ({ specifier }: Import): boolean => specifier.startsWith('node:');

const complain = (found: Import, what: string): string =>
  `${found.file} imports ${found.specifier}, ${what}`;

const onlyDeclared: Rule = (facts) => {
  const own = [String(facts.manifest.name)];
  const declared = ['dependencies', 'devDependencies'].flatMap((field) => namesUnder(facts, field));
  return importsOf(facts)
    .filter((found) => !isRelative(found) && !isNode(found))
    .filter(({ name, isTest }) => {
      const allowed = isTest ? [...declared, ...own, ...TEST_TOOLS] : declared;
      return !allowed.includes(name);
    })
    .map((found) => complain(found, 'which is no declared dependency'));
};

const neverPastIndex: Rule = (facts) =>
  importsOf(facts)
    .filter(({ specifier, name }) => name.startsWith('@reedplate/') && specifier !== name)
    .map((found) => complain(found, "past its neighbour's index"));

const withinSource: Rule = (facts) =>
  importsOf(facts)
    .filter((found) => isRelative(found) && !found.isTest)
    .map((found) => ({ ...found, path: posix.join(posix.dirname(found.file), found.specifier) }))
    .filter(({ path }) => !path.startsWith('src/') && path !== 'package.json')
    .map((found) => complain(found, "outside the package's source"));

const noTestsInSource: Rule = (facts) =>
  importsOf(facts)
    .filter(
      (found) =>
        !found.isTest && /\/arbitraries\.js$|\.(?:test|fixture)\.js$/u.test(found.specifier),
    )
    .map((found) => complain(found, 'which only tests may use'));

const nodeOnlyWhereNeeded: Rule = (facts) =>
  importsOf(facts)
    .filter((found) => isNode(found) && !found.isTest && !NODE_PACKAGES.has(facts.dir))
    .map((found) => complain(found, 'which is not there in a browser'));

/** A dev dependency that the source imports ends up inside dist, so its licence ships with it. */
const bundledAreLicensed: Rule = (facts) => {
  const bundled = importsOf(facts)
    .filter(({ isTest }) => !isTest)
    .map(({ name }) => name)
    .filter((name) => namesUnder(facts, 'devDependencies').includes(name));
  return [...new Set(bundled)]
    .filter((name) => !facts.thirdPartyLicences?.includes(`## ${name} `))
    .map((name) => `bundles ${name} without its licence in THIRD-PARTY-LICENSES.md`);
};

/** A dependency that nothing imports is a cost without a use. */
const noIdleDependencies: Rule = (facts) => {
  const imported = new Set(importsOf(facts).map(({ name }) => name));
  return namesUnder(facts, 'dependencies')
    .filter((name) => !imported.has(name))
    .map((name) => `depends on ${name} but never imports it`);
};

/** Every rule on what a package's source may import. */
export const IMPORT_RULES: readonly Rule[] = [
  onlyDeclared,
  neverPastIndex,
  withinSource,
  noTestsInSource,
  nodeOnlyWhereNeeded,
  bundledAreLicensed,
  noIdleDependencies,
];
