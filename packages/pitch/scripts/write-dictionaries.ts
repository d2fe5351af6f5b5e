/**
 * Writes the rows of `chord-types.ts` and `scale-types.ts` from the tonal that is installed. Run
 * after a change of tonal's version: `npm run dictionaries`, then read the difference.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chordRows, type DictionaryRow, scaleRows } from './from-tonal.js';

writeRows('chord-types.ts', chordRows());
writeRows('scale-types.ts', scaleRows());

/** Replaces the rows between the brackets of the one table in a file; what stands above stays. */
function writeRows(file: string, rows: readonly DictionaryRow[]): void {
  const path = fileURLToPath(new URL(`../src/${file}`, import.meta.url));
  const [head = ''] = readFileSync(path, 'utf8').split(/(?<= = \[\n)/u);
  const lines = rows.map(([degrees, names]) => `  [${quote(degrees)}, ${quote(names)}],`);
  writeFileSync(path, `${head}${lines.join('\n')}\n];\n`);
}

function quote(text: string): string {
  return text.includes("'") ? JSON.stringify(text) : `'${text}'`;
}
