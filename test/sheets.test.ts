import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { shownHandout, shownPictures, shownTab } from '../scripts/sheets/pictures.js';

const read = (name: string): string =>
  readFileSync(new URL(`../docs/${name}`, import.meta.url), 'utf8');
const page = read('sheets.md');

const STALE = 'stale: run scripts/sheets.ts';

describe('docs/sheets.md', () => {
  test.each(shownPictures().map((shown) => [shown.name, shown] as const))(
    'shows %s as it is drawn now, with the command that draws it',
    (name, { picture, command }) => {
      // Not the texts themselves: a page of SVG tells no one where it differs.
      expect(read(`sheets/${name}.svg`) === `${picture.svg}\n`, STALE).toBe(true);
      expect(page).toContain(`(sheets/${name}.svg)`);
      expect(page).toContain(`\`${command}\``);
    },
  );

  test('shows six pictures, the handout and the tab as they are written now', () => {
    expect(page.match(/\.svg\)/gu)).toHaveLength(6);
    expect(read('sheets/lesson.html') === shownHandout(), STALE).toBe(true);
    expect(page.includes(shownTab()), STALE).toBe(true);
  });
});
