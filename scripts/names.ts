import { writeFileSync } from 'node:fs';
import { ROOT } from './lib/root.mjs';
import { namesPage } from './umbrella/names-page.js';

// Writes docs/names.md: every name of the umbrella with what it is.
const { page, count } = namesPage();
writeFileSync(`${ROOT}docs/names.md`, page);
console.log(`${count} names`);
