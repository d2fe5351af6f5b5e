import { OptionDefaults } from 'typedoc';

/** What TypeDoc does in each package. */
const packageOptions = {
  entryPoints: ['src/index.ts'],
  tsconfig: '../../tsconfig.docs.json',
  readme: 'README.md',
  disableSources: true,
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

/** @type {import('typedoc').TypeDocOptions} */
export default {
  name: 'Reedplate',
  entryPointStrategy: 'packages',
  entryPoints: ['packages/*'],
  out: 'docs/api',
  includeVersion: true,
  treatWarningsAsErrors: true,
  packageOptions,
};
