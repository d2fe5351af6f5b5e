/** Marks that ABC puts before a letter, as the combining characters of Unicode. */
const ACCENTS: ReadonlyMap<string, string> = new Map([
  ['`', '\u0300'],
  ["'", '\u0301'],
  ['^', '\u0302'],
  ['~', '\u0303'],
  ['"', '\u0308'],
  ['c', '\u0327'],
]);

/** Letters that ABC writes as two: ABC 2.1, supported accents and ligatures (from memory). */
const LIGATURES: ReadonlyMap<string, string> = new Map([
  ['ss', 'ß'],
  ['ae', 'æ'],
  ['AE', 'Æ'],
  ['oe', 'œ'],
  ['OE', 'Œ'],
  ['aa', 'å'],
  ['AA', 'Å'],
  ['/o', 'ø'],
  ['/O', 'Ø'],
]);

const ESCAPE =
  /\\(?:([`'^~"c])([A-Za-z])|(ss|ae|AE|oe|OE|aa|AA|\/[oO])|u([0-9a-fA-F]{4})|([\\%&]))/gu;

/** Text of a field with its escapes read: `\'e` is é, `\&` is &. */
export function readAbcText(text: string): string {
  return text.trim().replace(ESCAPE, (_, accent, letter, ligature, code, plain) => {
    if (accent !== undefined) return `${letter}${ACCENTS.get(accent)}`.normalize('NFC');
    if (ligature !== undefined) return LIGATURES.get(ligature) ?? '';
    return code === undefined ? plain : String.fromCharCode(Number.parseInt(code, 16));
  });
}
