/** The escape codes of colours take no room on a screen. */
const COLOUR = new RegExp(`${String.fromCodePoint(0x1b)}\\[[\\d;]*m`, 'gu');

/** Columns that a text takes on a screen: code points, colours aside. */
export const widthOf = (text: string): number => [...text.replaceAll(COLOUR, '')].length;

/**
 * A line set within a width: broken at blanks, each further line indented as the first and by two
 * columns more. A word that is wider than the room is broken where the room ends.
 */
export function wrapLine(line: string, width: number): readonly string[] {
  if (widthOf(line) <= width) return [line];
  const blanks = Math.min(line.search(/[^ ]|$/u), Math.floor(width / 2));
  const indent = ' '.repeat(blanks);
  const [first = '', ...rest] = wrapWords(line.trimStart(), width - blanks);
  const hanging = Math.min(2, width - blanks - 1);
  return [
    indent + first,
    ...wrapWords(rest.join(' '), width - blanks - hanging).map(
      (text) => indent + ' '.repeat(hanging) + text,
    ),
  ].filter((text, at) => at === 0 || text.trim() !== '');
}

/** Words of a text in as few lines of a width as hold them; a text without words is one empty line. */
export function wrapWords(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ').flatMap((whole) => breakWord(whole, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line === '' || widthOf(longer) <= width) {
      line = longer;
    } else {
      lines.push(line.trimEnd());
      line = word;
    }
  }
  return [...lines, line.trimEnd()];
}

/** Widest word of a text. */
export const widestWord = (text: string): number =>
  Math.max(...text.split(' ').map((word) => widthOf(word)));

function breakWord(word: string, width: number): readonly string[] {
  if (widthOf(word) <= width) return [word];
  const points = [...word.replaceAll(COLOUR, '')];
  return Array.from({ length: Math.ceil(points.length / width) }, (_, part) =>
    points.slice(part * width, (part + 1) * width).join(''),
  );
}
