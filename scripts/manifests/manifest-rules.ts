import { isDeepStrictEqual } from 'node:util';
import type { PackageFacts } from './facts.js';
import { PACKAGE_ORDER, UMBRELLA } from './package-order.js';

/** A rule of the house: what it finds wrong with a package, nothing if all is well. */
export type Rule = (facts: PackageFacts) => readonly string[];

export const nameOf = (dir: string): string => (dir === UMBRELLA ? dir : `@reedplate/${dir}`);
export const dirOf = (name: string): string => name.replace(/^@reedplate\//u, '');
const isOurs = (name: string): boolean => name === UMBRELLA || name.startsWith('@reedplate/');

/** The names under one of the manifest's fields, such as `dependencies`. */
export const namesUnder = ({ manifest }: PackageFacts, field: string): readonly string[] =>
  Object.keys((manifest[field] as object | undefined) ?? {});

const SHARED_FIELDS = {
  license: 'MIT',
  author: 'The Reedplate authors',
  type: 'module',
  engines: { node: '>=20' },
  sideEffects: false,
  main: './dist/index.cjs',
  module: './dist/index.js',
  types: './dist/index.d.cts',
  publishConfig: { access: 'public' },
  scripts: { build: 'tsup --config ../../tsup.config.ts' },
};

const ENTRY = {
  import: { types: './dist/index.d.ts', default: './dist/index.js' },
  require: { types: './dist/index.d.cts', default: './dist/index.cjs' },
};

const mustBe = (field: string, actual: unknown, expected: unknown): readonly string[] =>
  isDeepStrictEqual(actual, expected)
    ? []
    : [`"${field}" must be ${JSON.stringify(expected)}, not ${JSON.stringify(actual)}`];

const sharedFields: Rule = ({ manifest }) =>
  Object.entries(SHARED_FIELDS).flatMap(([field, value]) => mustBe(field, manifest[field], value));

const ownFields: Rule = ({ dir, manifest }) => [
  ...mustBe('name', manifest.name, nameOf(dir)),
  ...(String(manifest.description ?? '').endsWith('.') ? [] : ['"description" must be a sentence']),
  ...(Array.isArray(manifest.keywords) && manifest.keywords.length >= 3
    ? []
    : ['"keywords" must hold three or more']),
];

const exportsShape: Rule = ({ manifest, hasSchemas, hasCommand }) => [
  ...mustBe('exports', manifest.exports, {
    '.': ENTRY,
    ...(hasSchemas && { './schemas/*.json': './schemas/*.json' }),
    './package.json': './package.json',
  }),
  ...mustBe('bin', manifest.bin, hasCommand ? { [UMBRELLA]: './dist/bin.js' } : undefined),
];

const shippedFiles: Rule = ({ manifest, hasSchemas, thirdPartyLicences }) =>
  mustBe('files', manifest.files, [
    'dist',
    ...(hasSchemas ? ['schemas'] : []),
    'README.md',
    'LICENSE',
    ...(thirdPartyLicences === undefined ? [] : ['THIRD-PARTY-LICENSES.md']),
  ]);

const licenceAndReadme: Rule = ({ licence, readme, manifest }) => [
  ...(licence?.startsWith('MIT License') ? [] : ['LICENSE must be there and be the MIT License']),
  ...(readme?.startsWith(`# ${manifest.name}\n`)
    ? []
    : [`README.md must be there and begin with "# ${manifest.name}"`]),
  ...(readme === undefined || readme.includes('```ts') ? [] : ['README.md must hold an example']),
];

/** Arrows only downward: every dependency of ours stands earlier in the order. */
const arrowsDownward: Rule = (facts) => {
  const place = PACKAGE_ORDER.indexOf(facts.dir);
  if (place === -1) return [`"${facts.dir}" is missing from scripts/manifests/package-order.ts`];
  const allowed = new Set(PACKAGE_ORDER.slice(0, place));
  return ['dependencies', 'devDependencies', 'peerDependencies', 'optionalDependencies']
    .flatMap((field) => namesUnder(facts, field))
    .filter((name) => isOurs(name) && !allowed.has(dirOf(name)))
    .map((name) => `depends on ${name}, which does not stand below it`);
};

const workspaceVersions: Rule = ({ manifest }) =>
  Object.entries((manifest.dependencies as Record<string, string> | undefined) ?? {})
    .filter(([name, version]) => isOurs(name) && version !== 'workspace:^')
    .map(([name, version]) => `${name} must be "workspace:^", not "${version}"`);

const EXACT = /^\d+\.\d+\.\d+$/u;

/** What is installed beside ours is what was tested with them; what a person brings along may be newer. */
const exactVersions: Rule = ({ manifest }) =>
  Object.entries((manifest.dependencies as Record<string, string> | undefined) ?? {})
    .filter(([name, version]) => !isOurs(name) && !EXACT.test(version))
    .map(([name, version]) => `${name} must be one exact version, not "${version}"`);

/** Every rule on a package's manifest and the files around it. */
export const MANIFEST_RULES: readonly Rule[] = [
  ownFields,
  sharedFields,
  exportsShape,
  shippedFiles,
  licenceAndReadme,
  arrowsDownward,
  workspaceVersions,
  exactVersions,
];
