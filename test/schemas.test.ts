import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, test } from 'vitest';
import { workspacePackages } from '../scripts/lib/packages.mjs';
import { ROOT } from '../scripts/lib/root.mjs';
import { generateSchemas } from '../scripts/schemas/generate.js';
import { SCHEMA_TABLE } from '../scripts/schemas/schema-table.js';

const files = workspacePackages()
  .filter(({ path }) => existsSync(`${path}/schemas`))
  .flatMap(({ dir, path }) =>
    readdirSync(`${path}/schemas`).map((file) => `packages/${dir}/schemas/${file}`),
  )
  .sort();
const textOf = (file: string): string => readFileSync(join(ROOT, file), 'utf8');

describe('the published schemas', () => {
  test('are what the types give now; if not, run "npm run schemas"', { timeout: 60_000 }, () => {
    const generated = generateSchemas(SCHEMA_TABLE);
    expect(files).toEqual([...generated.keys()].sort());
    for (const [file, text] of generated) expect(textOf(file), file).toBe(text);
  });

  test.each(files)('%s is a valid draft-07 schema that refuses what is no such value', (file) => {
    const schema = JSON.parse(textOf(file));
    expect(schema.$schema).toBe('http://json-schema.org/draft-07/schema#');
    const validate = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
    expect(validate(null)).toBe(false);
    expect(validate({ '': 1 })).toBe(false);
  });
});
