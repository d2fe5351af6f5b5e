import { type Harp, harpName } from '@reedplate/layout';
import type { Terminal } from '../terminal.js';
import { setTable, type Table } from './table.js';
import { wrapLine } from './wrap.js';

/** Words that say how an answer is printed. */
export interface PrintWords {
  readonly json: boolean;
  /** Whether the JSON has harps with all their reeds. */
  readonly allReeds?: boolean;
}

/** What an answer is printed on. */
export interface Page {
  /** Columns of a line. */
  readonly width: number;
  readonly paint: Paint;
  /** Sets a table within the width, its head as a heading. */
  readonly table: (table: Table) => readonly string[];
}

/**
 * Prints an answer: as JSON when asked, else line by line as `show` sets it, no line wider than the
 * terminal. In JSON a harp stands by its name, which every verb and `parseHarp` read; `--all-reeds` gives
 * all of it.
 */
export function printAnswer<Answer>(
  answer: Answer,
  { json, allReeds = false }: PrintWords,
  terminal: Pick<Terminal, 'out' | 'colour' | 'width'>,
  show: (answer: Answer, page: Page) => readonly string[],
): void {
  const text = json
    ? JSON.stringify(answer, allReeds ? undefined : withHarpsByName, 2)
    : show(answer, pageOf(terminal))
        .flatMap((line) => wrapLine(line, terminal.width))
        .join('\n');
  terminal.out(`${text}\n`);
}

function pageOf({ colour, width }: Pick<Terminal, 'colour' | 'width'>): Page {
  const paint = painter(colour);
  const heading = (text: string): string => paint('heading', text);
  return { width, paint, table: (table) => setTable(table, { width, heading }) };
}

const withHarpsByName = (_: string, value: unknown): unknown =>
  isHarp(value) ? harpName(value) : value;

/** A tuning has holes as well, but no first position. */
function isHarp(value: unknown): value is Harp {
  return (
    typeof value === 'object' && value !== null && 'holes' in value && 'firstPosition' in value
  );
}

/**
 * Colours that mark what the words already say: our own for the I, IV and V chords (green, violet,
 * amber), and one each for headings, asides and warnings.
 */
const INKS = {
  one: '32',
  four: '35',
  five: '33',
  heading: '1',
  aside: '2',
  warning: '1;33',
} as const;

/** What a piece of text is, for its colour. */
export type Ink = keyof typeof INKS;

/** Colours text where the terminal shows colour, and leaves it alone elsewhere. */
export type Paint = (ink: Ink, text: string) => string;

function painter(colour: boolean): Paint {
  return (ink, text) => (colour && text !== '' ? `\u001b[${INKS[ink]}m${text}\u001b[0m` : text);
}

/** The ink of a chord by its numeral: I, IV and V have one each, other chords none. */
export function inkOfNumeral(numeral: string | null): Ink | undefined {
  const degree = /^(?:IV|iv|V|v|I|i)(?![IViv])/u.exec(numeral ?? '')?.[0].toUpperCase();
  if (numeral?.includes('/')) return undefined;
  if (degree === 'I') return 'one';
  if (degree === 'IV') return 'four';
  return degree === 'V' ? 'five' : undefined;
}
