/** Where a mark stands in the text, both counted from 1. */
export interface MarkPlace {
  readonly line: number;
  readonly column: number;
}

/** A bar line of any kind. */
export interface BarLine extends MarkPlace {
  readonly kind: 'bar-line';
  readonly text: string;
  /** `:|` ends a repeat here. */
  readonly closes: boolean;
  /** `|:` begins a repeat here. */
  readonly opens: boolean;
}

/** Anything between bar lines: a chord, `%`, `/`, `N.C.`, `1.`, or what should not be there. */
export interface Mark extends MarkPlace {
  readonly kind: 'mark' | 'ending';
  readonly text: string;
}

/** A piece of the notation. */
export type Token = BarLine | Mark;

const LINE_BREAK = /\r\n|\n|\r/u;
/** A bar line, the numbers of an ending, any other word, or a colon out of place. */
const PIECE = /(:?\|{1,2}:?)|((?:[1-9][.,])+)|([^\s|:]+|:)/gu;

/** Cuts the notation into its pieces, in one pass and without judging them. */
export function tokenise(text: string): readonly Token[] {
  return text.split(LINE_BREAK).flatMap((line, index) => tokeniseLine(line, index + 1));
}

function tokeniseLine(text: string, line: number): readonly Token[] {
  return Array.from(text.matchAll(PIECE), (match): Token => {
    const place = { line, column: match.index + 1 };
    const [piece, barLine, ending] = match;
    if (barLine === undefined) {
      return { kind: ending === undefined ? 'mark' : 'ending', text: piece, ...place };
    }
    const closes = piece.startsWith(':');
    return { kind: 'bar-line', text: piece, closes, opens: piece.endsWith(':'), ...place };
  });
}
