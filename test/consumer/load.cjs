// Requires every package by name, and every schema that a package ships.
const { names, schemas } = require('./names.json');

for (const name of names) {
  if (Object.keys(require(name)).length === 0) throw new Error(`${name} exports nothing`);
}
for (const schema of schemas) {
  if (require(schema).$schema === undefined) throw new Error(`${schema} is no JSON Schema`);
}
if (require('reedplate').midi('C4') !== 60) throw new Error('reedplate does not work as CommonJS');
console.log(`${names.length} packages and ${schemas.length} schemas required`);
