import { readdirSync } from 'node:fs';
import { OptionDefaults } from 'typedoc';

/** What TypeDoc does in each package. */
const packageOptions = {
  entryPoints: ['src/index.ts'],
  tsconfig: '../../tsconfig.docs.json',
  readme: 'README.md',
  disableSources: true,
  // As the index files have it: their headings in their order, what can be called before its types.
  categorizeByGroup: false,
  sort: ['kind', 'source-order'],
  kindSortOrder: ['Function', 'Variable', 'Class', 'Interface', 'TypeAlias', 'Reference'],
  // What the packages of the house check input with is for them alone.
  excludeInternal: true,
  validation: { notExported: true, invalidLink: true, notDocumented: true },
  requiredToBeDocumented: [
    'Class',
    'Enum',
    'Function',
    'Interface',
    'Namespace',
    'TypeAlias',
    'Variable',
  ],
  // Bounds that also go into the JSON Schemas.
  blockTags: [
    ...OptionDefaults.blockTags,
    '@minimum',
    '@maximum',
    '@exclusiveMinimum',
    '@pattern',
    '@minItems',
    '@maxItems',
    '@uniqueItems',
    '@minLength',
    '@maxLength',
    '@asType',
  ],
};

// The umbrella re-exports what stands in the other packages, and would list all of it twice.
const rooms = readdirSync('packages').filter((dir) => dir !== 'reedplate');

/** @type {import('typedoc').TypeDocOptions} */
export default {
  name: 'Reedplate',
  entryPointStrategy: 'packages',
  entryPoints: rooms.map((dir) => `packages/${dir}`),
  plugin: ['./scripts/typedoc/sections.mjs'],
  readme: 'README.md',
  projectDocuments: ['docs/getting-started-*.md', 'docs/!(getting-started-*).md'],
  navigation: { includeCategories: true, includeGroups: false },
  out: 'docs/api',
  includeVersion: true,
  treatWarningsAsErrors: true,
  packageOptions,
};
