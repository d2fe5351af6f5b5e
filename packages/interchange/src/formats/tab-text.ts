/**
 * Tablature with rhythm as tablature without: lengths and rests taken out, for finding its dialect.
 * What is taken out is put back as spaces, so that places stay.
 */
export function tabWithoutLengths(text: string): string {
  return text
    .replace(/:\d{1,8}(?:\.\d{1,4})?(?:\/\d{1,4})?(?=\s|\||$)/gu, blank)
    .replace(/(?<=^|\s|\|)[rR](?=\s|\||$)/gu, blank);
}

function blank(text: string): string {
  return ' '.repeat(text.length);
}
