/**
 * Draws what `docs/sheets.md` shows, into `docs/sheets`, and sets the tab of the page anew.
 *
 *     npx tsx --tsconfig tsconfig.json scripts/sheets.ts
 */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { shownHandout, shownPictures, shownTab } from './sheets/pictures.js';

const DOCS = join(dirname(fileURLToPath(import.meta.url)), '..', 'docs');
const BEGIN = '<!-- tab: scripts/sheets.ts -->';
const END = '<!-- end of tab -->';

mkdirSync(join(DOCS, 'sheets'), { recursive: true });
for (const { name, picture } of shownPictures()) {
  writeFileSync(join(DOCS, 'sheets', `${name}.svg`), `${picture.svg}\n`);
}
writeFileSync(join(DOCS, 'sheets', 'lesson.html'), shownHandout());

const page = readFileSync(join(DOCS, 'sheets.md'), 'utf8');
const [before, after] = [page.indexOf(BEGIN), page.indexOf(END)];
if (before === -1 || after === -1) throw new Error(`docs/sheets.md has lost ${BEGIN}`);
const tab = `${BEGIN}\n\n\`\`\`text\n${shownTab()}\`\`\`\n\n`;
writeFileSync(join(DOCS, 'sheets.md'), page.slice(0, before) + tab + page.slice(after));
