import { describe, expect, test } from 'vitest';
import { type PackageFacts, sourceFacts } from './facts.js';
import { IMPORT_RULES } from './import-rules.js';
import { MANIFEST_RULES } from './manifest-rules.js';
import { workspaceComplaints } from './workspace-rules.js';

const TAB: PackageFacts = {
  dir: 'tab',
  manifest: {
    name: '@reedplate/tab',
    version: '0.1.0',
    description: 'Tablature.',
    keywords: ['a', 'b', 'c'],
    license: 'MIT',
    author: 'The Reedplate authors',
    type: 'module',
    engines: { node: '>=20' },
    sideEffects: false,
    main: './dist/index.cjs',
    module: './dist/index.js',
    types: './dist/index.d.cts',
    exports: {
      '.': {
        import: { types: './dist/index.d.ts', default: './dist/index.js' },
        require: { types: './dist/index.d.cts', default: './dist/index.cjs' },
      },
      './package.json': './package.json',
    },
    files: ['dist', 'README.md', 'LICENSE'],
    publishConfig: { access: 'public' },
    scripts: { build: 'tsup --config ../../tsup.config.ts' },
    dependencies: { '@reedplate/pitch': 'workspace:^' },
  },
  sources: [sourceFacts('src/index.ts', "import { midi } from '@reedplate/pitch';")],
  hasSchemas: false,
  hasCommand: false,
  licence: 'MIT License\n',
  readme: '# @reedplate/tab\n```ts\n```\n',
  thirdPartyLicences: undefined,
};

const complaintsOf = (facts: PackageFacts): readonly string[] =>
  [...MANIFEST_RULES, ...IMPORT_RULES].flatMap((rule) => rule(facts));

const withManifest = (change: object): PackageFacts => ({
  ...TAB,
  manifest: { ...TAB.manifest, ...change },
});

const withSource = (file: string, text: string): PackageFacts => ({
  ...TAB,
  sources: [...TAB.sources, sourceFacts(file, text)],
});

describe('the rules', () => {
  test('find nothing wrong with a package that keeps them', () => {
    expect(complaintsOf(TAB)).toEqual([]);
  });

  test.each([
    ['another licence', { license: 'ISC' }, '"license" must be "MIT"'],
    ['a name that is not the folder', { name: '@reedplate/tabs' }, '"name" must be'],
    ['side effects', { sideEffects: true }, '"sideEffects" must be false'],
    ['a description that is no sentence', { description: 'Tab' }, 'must be a sentence'],
    ['too few keywords', { keywords: [] }, '"keywords"'],
    ['exports without the types of CJS', { exports: { '.': './dist/index.js' } }, '"exports"'],
    ['a command that has no source', { bin: { reedplate: './dist/cli.js' } }, '"bin" must be'],
    ['files that differ', { files: ['dist'] }, '"files" must be'],
    [
      'an arrow upward',
      { dependencies: { '@reedplate/pitch': 'workspace:^', '@reedplate/lesson': 'workspace:^' } },
      '@reedplate/lesson, which does not stand below it',
    ],
    ['an arrow upward for tests', { devDependencies: { reedplate: 'workspace:^' } }, 'stand below'],
    ['an arrow to itself', { devDependencies: { '@reedplate/tab': 'workspace:^' } }, 'stand below'],
    ['a fixed version', { dependencies: { '@reedplate/pitch': '^0.1.0' } }, 'workspace:^'],
    ['a floating version', { dependencies: { tinypool: '^2.1.0' } }, 'one exact version'],
    [
      'an idle dependency',
      { dependencies: { '@reedplate/pitch': 'workspace:^', lodash: '4' } },
      'never imports it',
    ],
  ])('find %s', (_, change, complaint) => {
    expect(complaintsOf(withManifest(change)).join('\n')).toContain(complaint);
  });

  test.each([
    ['an import of what is not declared', "import _ from 'lodash';", 'no declared dependency'],
    ['an import of a test tool in source', "import 'vitest';", 'no declared dependency'],
    ['a dynamic import', "await import('lodash');", 'no declared dependency'],
    ['a re-export', "export * from 'lodash';", 'no declared dependency'],
    ['a type import', "import type { A } from 'lodash';", 'no declared dependency'],
    ['a step past the index', "import '@reedplate/pitch/dist/x.js';", "past its neighbour's index"],
    ['a step out of the source', "import '../../pitch/src/a.js';", "outside the package's source"],
    ['a test helper in source', "import './arbitraries.js';", 'only tests may use'],
    ['a fixture in source', "import './trial.fixture.js';", 'only tests may use'],
    ['a module of Node', "import 'node:fs';", 'not there in a browser'],
  ])('find %s', (_, text, complaint) => {
    expect(complaintsOf(withSource('src/a.ts', text)).join('\n')).toContain(complaint);
  });

  test('let tests import test tools, the package itself and Node', () => {
    const text = "import 'vitest'; import 'node:fs'; import '@reedplate/tab';";
    expect(complaintsOf(withSource('src/a.test.ts', text))).toEqual([]);
  });

  test('let the arbitraries of laws import fast-check', () => {
    expect(complaintsOf(withSource('src/arbitraries.ts', "import fc from 'fast-check';"))).toEqual(
      [],
    );
  });

  test('find a bundled dependency whose licence is not shipped', () => {
    const bundling = withSource('src/a.ts', "import { Note } from 'tonal';");
    const facts = {
      ...bundling,
      manifest: { ...TAB.manifest, devDependencies: { tonal: '6.4.3' } },
    };
    expect(complaintsOf(facts)).toEqual([expect.stringContaining('bundles tonal')]);
  });

  test.each([
    ['licence', { licence: undefined }],
    ['README', { readme: undefined }],
    ['README with the name at its head', { readme: '# Tab\n```ts\n```' }],
    ['example in the README', { readme: '# @reedplate/tab\n' }],
  ])('find a missing %s', (_, change) => {
    expect(complaintsOf({ ...TAB, ...change })).toHaveLength(1);
  });

  test('find a package that has no place in the order', () => {
    const facts = { ...withManifest({ name: '@reedplate/spare' }), dir: 'spare' };
    expect(complaintsOf({ ...facts, readme: '# @reedplate/spare\n```ts' })).toEqual([
      expect.stringContaining('package-order'),
    ]);
  });
});

describe('workspaceComplaints', () => {
  const umbrella: PackageFacts = {
    ...TAB,
    dir: 'reedplate',
    sources: [sourceFacts('src/index.ts', "export * from '@reedplate/tab';")],
  };

  test('finds nothing wrong where the umbrella re-exports all and versions agree', () => {
    expect(workspaceComplaints([TAB, umbrella])).toEqual([]);
  });

  test('finds a package that the umbrella leaves out', () => {
    expect(workspaceComplaints([TAB, { ...umbrella, sources: [] }])).toHaveLength(1);
  });

  test('lets the umbrella leave out what needs Node', () => {
    const apart = { ...TAB, dir: 'study' };
    expect(workspaceComplaints([TAB, apart, umbrella])).toEqual([]);
  });

  test('finds versions that differ', () => {
    expect(workspaceComplaints([withManifest({ version: '0.2.0' }), umbrella])).toHaveLength(1);
  });
});
