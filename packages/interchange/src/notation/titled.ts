import type { Sheet } from '../piece.js';

/** The sheet under a title, or as it is where none is given. */
export function titled(sheet: Sheet, title: string | undefined): Sheet {
  return title === undefined ? sheet : { ...sheet, line: { ...sheet.line, title } };
}
