import { GLYPH_WIDTHS } from './glyph-widths.js';

/** How thick text is drawn. */
export type Weight = 'normal' | 'bold';

/** What a character takes that the table does not know: as much as the widest of most alphabets. */
const UNKNOWN = 1100;

const WIDTHS: Readonly<Record<Weight, ReadonlyMap<string, number>>> = Object.freeze({
  normal: byCharacter('normal'),
  bold: byCharacter('bold'),
});

function byCharacter(weight: Weight): ReadonlyMap<string, number> {
  return new Map(
    Object.entries(GLYPH_WIDTHS[weight]).flatMap(([width, characters]) =>
      [...characters].map((character): [string, number] => [character, Number(width)]),
    ),
  );
}

/** The width of a text in pixels, from a fixed table: the same everywhere, and rather too wide. */
export function textWidth(text: string, size: number, weight: Weight = 'normal'): number {
  const widths = WIDTHS[weight];
  let thousandths = 0;
  for (const character of text) thousandths += widths.get(character) ?? UNKNOWN;
  return (thousandths * size) / 1000;
}

/** Breaks a text at its spaces into lines that are no wider; a longer word is cut. */
export function wrapText(
  text: string,
  width: number,
  size: number,
  weight: Weight = 'normal',
): readonly string[] {
  const fits = (part: string): boolean => textWidth(part, size, weight) <= width;
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/u).filter((part) => part !== '')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const pieces = cutWord(word, fits);
    lines.push(...pieces.slice(0, -1));
    line = pieces.at(-1) ?? '';
  }
  return line === '' ? lines : [...lines, line];
}

function cutWord(word: string, fits: (part: string) => boolean): readonly string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const character of word) {
    if (piece !== '' && !fits(piece + character)) {
      pieces.push(piece);
      piece = '';
    }
    piece += character;
  }
  return [...pieces, piece];
}

/** The largest size, from the one wanted down to the smallest readable, in which all texts fit. */
export function sizeToFit(
  texts: readonly string[],
  { width, wanted, weight = 'normal' }: SizeLimits,
): number {
  const widest = Math.max(0, ...texts.map((text) => textWidth(text, 1, weight)));
  return widest * wanted <= width ? wanted : Math.floor((width / widest) * 10) / 10;
}

/** What {@link sizeToFit} goes by. */
export interface SizeLimits {
  readonly width: number;
  readonly wanted: number;
  readonly weight?: Weight;
}
