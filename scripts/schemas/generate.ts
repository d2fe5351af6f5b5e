import {
  type CompletedConfig,
  createFormatter,
  createParser,
  DEFAULT_CONFIG,
  type Schema,
  SchemaGenerator,
} from 'ts-json-schema-generator';
import ts from 'typescript';
import { ROOT } from '../lib/root.mjs';
import type { SchemaRow } from './schema-table.js';

const CONFIG: CompletedConfig = {
  ...DEFAULT_CONFIG,
  additionalProperties: false,
  expose: 'export',
  jsDoc: 'extended',
  sortProps: true,
};

const indexOf = (dir: string): string => `${ROOT}packages/${dir}/src/index.ts`;

/** The file a row's schema is kept in, from the root of the workspace. */
export const schemaFile = ({ dir, name }: SchemaRow): string =>
  `packages/${dir}/schemas/${name}.json`;

/**
 * The schema of each row as the text of its file, made from the types as they now are. A row whose
 * type its package does not export (yet) gives none.
 */
export function generateSchemas(rows: readonly SchemaRow[]): ReadonlyMap<string, string> {
  const program = createProgram([...new Set(rows.map(({ dir }) => indexOf(dir)))]);
  const generator = new SchemaGenerator(
    program,
    createParser(program, CONFIG),
    createFormatter(CONFIG),
    CONFIG,
  );
  return new Map(
    rows.flatMap((row) => {
      const type = exportedType(program, row);
      if (type === undefined) return [];
      const schema = withHarps(generator.createSchemaFromNodes([type]), row);
      return [[schemaFile(row), `${JSON.stringify(schema, null, 2)}\n`] as const];
    }),
  );
}

/** The schema with harps by name as well, where the row says so. */
function withHarps(schema: Schema, { harps }: SchemaRow): Schema {
  const harp = schema.definitions?.Harp;
  if (harps === undefined || harp === undefined) return schema;
  const name = { type: 'string', description: 'Name of a harp, such as `low F`.' } as const;
  return { ...schema, definitions: { ...schema.definitions, Harp: { anyOf: [name, harp] } } };
}

function createProgram(files: readonly string[]): ts.Program {
  const { config } = ts.readConfigFile(`${ROOT}tsconfig.docs.json`, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(
    { ...config, files, include: [] },
    ts.sys,
    ROOT,
  );
  return ts.createProgram(files, options);
}

/** The declaration behind a type that a package's index exports, wherever it stands. */
function exportedType(program: ts.Program, { dir, type }: SchemaRow): ts.Node | undefined {
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(indexOf(dir));
  const index = source && checker.getSymbolAtLocation(source);
  const exported = index && checker.getExportsOfModule(index).find(({ name }) => name === type);
  const isAlias = exported !== undefined && (exported.flags & ts.SymbolFlags.Alias) !== 0;
  const symbol = isAlias ? checker.getAliasedSymbol(exported) : exported;
  return symbol?.declarations?.[0];
}
