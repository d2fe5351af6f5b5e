import { ReedplateError } from '@reedplate/pitch';
import type { BarLine, Mark, MarkPlace, Token } from './tokens.js';

/** A bar as it stands on the page: its marks and the signs at its two bar lines. */
export interface WrittenBar extends MarkPlace {
  /** Place among the bars on the page, from 1. */
  readonly bar: number;
  readonly marks: readonly Mark[];
  /** A repeat begins with this bar. */
  readonly opens: boolean;
  /** A repeat ends with this bar. */
  readonly closes: boolean;
  /** Passes that play this bar, where an ending begins here. */
  readonly passes: readonly number[] | undefined;
}

/** The error of the notation: what stood where, and what should have. */
export function syntaxError(
  mark: { readonly text: string } & MarkPlace,
  bar: number,
  expected: string,
  nearest?: string,
): ReedplateError {
  const { text, line, column } = mark;
  const where = { bar, line, column };
  return new ReedplateError({ code: 'FORM_SYNTAX', value: text, expected, nearest, where });
}

const START: BarLine = {
  kind: 'bar-line',
  text: '',
  closes: false,
  opens: false,
  line: 1,
  column: 1,
};

/**
 * Gathers pieces into bars. The first and the last bar line may be left out, and the bar line at
 * the end of a line of text may be written again at the beginning of the next.
 */
export function writtenBars(tokens: readonly Token[]): readonly WrittenBar[] {
  const bars: WrittenBar[] = [];
  let opening = START;
  let marks: Mark[] = [];
  for (const token of tokens) {
    if (token.kind !== 'bar-line') {
      marks.push(token);
    } else if (marks.length > 0) {
      bars.push(writtenBar(opening, marks, token, bars.length + 1));
      opening = token;
      marks = [];
    } else {
      opening = joinBarLines(opening, token, bars.length + 1);
    }
  }
  if (marks.length > 0) bars.push(writtenBar(opening, marks, START, bars.length + 1));
  return bars;
}

/** Two bar lines with nothing between them are one only across the end of a line of text. */
function joinBarLines(first: BarLine, second: BarLine, bar: number): BarLine {
  const joins = first === START || (first.line < second.line && !second.closes);
  if (!joins || (first === START && second.closes)) {
    throw syntaxError(second, bar, 'a chord, % or N.C. in the bar before this bar line');
  }
  return { ...second, closes: first.closes, opens: first.opens || second.opens };
}

function writtenBar(
  opening: BarLine,
  written: readonly Mark[],
  closing: BarLine,
  bar: number,
): WrittenBar {
  const [first, ...rest] = written as readonly [Mark, ...Mark[]];
  const passes = first.kind === 'ending' ? readPasses(first) : undefined;
  const marks = passes === undefined ? written : rest;
  if (marks.length === 0) throw syntaxError(first, bar, 'a chord after the number of the ending');
  const { line, column } = first;
  const { opens } = opening;
  return { bar, marks, opens, closes: closing.closes, passes, line, column };
}

function readPasses({ text }: Mark): readonly number[] {
  return Array.from(text.matchAll(/\d/gu), ([digit]) => Number(digit));
}
