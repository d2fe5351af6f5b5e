import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { workspacePackages } from '../scripts/lib/packages.mjs';
import { ROOT } from '../scripts/lib/root.mjs';
import { generateSchemas, schemaFile } from '../scripts/schemas/generate.js';
import { SCHEMA_TABLE } from '../scripts/schemas/schema-table.js';

const textOf = (file: string): string => readFileSync(join(ROOT, file), 'utf8');

describe('the published schemas', () => {
  test('are what the types give now; if not, run "npm run schemas"', () => {
    for (const [file, text] of generateSchemas(SCHEMA_TABLE)) {
      expect(existsSync(join(ROOT, file)) ? textOf(file) : 'missing', file).toBe(text);
    }
  }, 60_000);

  test('are exactly those of the table', () => {
    const present = workspacePackages()
      .filter(({ path }) => existsSync(`${path}/schemas`))
      .flatMap(({ dir, path }) =>
        readdirSync(`${path}/schemas`).map((file) => `packages/${dir}/schemas/${file}`),
      );
    expect(present.sort()).toEqual(SCHEMA_TABLE.map(schemaFile).sort());
  });

  test.each(SCHEMA_TABLE.map((row) => [schemaFile(row)]))(
    '%s is a valid draft-07 schema',
    (file) => {
      const schema = JSON.parse(textOf(file));
      expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
      const validate = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
      expect(validate(null)).toBe(false);
      expect(validate({ '': 1 })).toBe(false);
    },
  );
});
