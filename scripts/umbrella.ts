import { writeFileSync } from 'node:fs';
import { exportsOfPackages } from './lib/exports-of.js';
import { ROOT } from './lib/root.mjs';
import { NODE_PACKAGES, UMBRELLA } from './manifests/package-order.js';
import { isLeftOut } from './umbrella/is-left-out.js';

// Writes the index of the umbrella: the names of every package that runs in a browser, but for what the
// packages export for each other alone and for what is left out on purpose.
const head = `/**
 * Reedplate in one import: every package that runs in a browser as well as in Node.
 *
 * @packageDocumentation
 */

// Written by \`npm run umbrella\`.
`;

const blocks = exportsOfPackages()
  .filter(({ dir }) => dir !== UMBRELLA && !NODE_PACKAGES.has(dir))
  .map(({ name, dir, exports }) => {
    const names = exports
      .filter((found) => !isLeftOut(dir, found))
      .map((found) => (found.isType ? `type ${found.name}` : found.name));
    return `export {\n${names.map((each) => `  ${each},\n`).join('')}} from '${name}';\n`;
  });

writeFileSync(`${ROOT}packages/${UMBRELLA}/src/index.ts`, head + blocks.join(''));
