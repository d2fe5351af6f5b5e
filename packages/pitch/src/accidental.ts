/** Printed accidentals, and `x` for a double sharp, as the signs that names are kept in. */
const ASCII_SIGNS: ReadonlyMap<string, string> = new Map([
  ['♯', '#'],
  ['♭', 'b'],
  ['𝄪', '##'],
  ['𝄫', 'bb'],
  ['x', '##'],
]);

/** The text with every accidental written as `#` and `b`. */
export function asciiSigns(text: string): string {
  return text.replaceAll(/[♯♭𝄪𝄫x]/gu, (sign) => ASCII_SIGNS.get(sign) ?? sign);
}

/** What may stand between a letter and the rest of a symbol, longest first. */
export const ACCIDENTAL_PATTERN = '##|bb|♯♯|♭♭|[#b♯♭x𝄪𝄫]';
