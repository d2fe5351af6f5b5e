/** Holes from the first to the last that a mouth covers, the blocked ones counted in. Common practice. */
const WIDEST_MOUTH = 5;

/**
 * What is wrong with a word of tab in signs, read from its letters alone; undefined for a word that can be
 * played. It shares no code with what writes tab.
 */
export function complaintOf(word: string, holesOfHarp = 10): string | undefined {
  const marks = [...word.matchAll(/([+-])(\d+)('*)(o?)/gu)];
  const plain = word.replace(/[()]/gu, '');
  if (marks.map(([whole]) => whole).join('') !== plain || plain === '') {
    return `${word} cannot be read`;
  }
  if (new Set(marks.map(([, breath]) => breath)).size !== 1) return `${word} mixes blow and draw`;
  const holes = marks.map(([, , hole]) => Number(hole));
  if (holes.some((hole) => hole < 1 || hole > holesOfHarp)) return `${word} is off the harp`;
  if (new Set(holes).size !== holes.length) return `${word} has a hole twice`;
  const width = Math.max(...holes) - Math.min(...holes) + 1;
  if (width > WIDEST_MOUTH) return `${word} is wider than a mouth`;
  const isSplit = holes.length > 1 && width > holes.length;
  if (isSplit && holes.length > 2) return `${word} blocks more than one gap`;
  const bent = marks.some(([, , , bend, over]) => bend !== '' || over !== '');
  return bent && marks.length > 1 ? `${word} bends a chord` : undefined;
}
