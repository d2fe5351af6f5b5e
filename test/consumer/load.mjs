// Imports every package by name, as an ES module.
import { readFileSync } from 'node:fs';

const { names } = JSON.parse(readFileSync('names.json', 'utf8'));
for (const name of names) {
  const loaded = await import(name);
  if (Object.keys(loaded).length === 0) throw new Error(`${name} exports nothing`);
}
const { midi } = await import('reedplate');
if (midi('C4') !== 60) throw new Error('reedplate does not work as an ES module');
console.log(`${names.length} packages imported`);
