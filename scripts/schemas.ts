import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { ROOT } from './lib/root.mjs';
import { generateSchemas, schemaFile } from './schemas/generate.js';
import { SCHEMA_TABLE } from './schemas/schema-table.js';

// Writes the JSON Schemas of the table from the types they describe.
const schemas = generateSchemas(SCHEMA_TABLE);
for (const [file, text] of schemas) {
  mkdirSync(dirname(join(ROOT, file)), { recursive: true });
  writeFileSync(join(ROOT, file), text);
}
console.log(`${schemas.size} schemas written`);
for (const row of SCHEMA_TABLE.filter((row) => !schemas.has(schemaFile(row)))) {
  console.warn(`packages/${row.dir} exports no type ${row.type}: no ${schemaFile(row)}`);
}
