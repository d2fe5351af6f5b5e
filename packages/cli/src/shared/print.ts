import type { Terminal } from '../terminal.js';

/** Prints a report: as JSON when asked, else line by line as `show` sets it. */
export function printReport<Report>(
  report: Report,
  { json }: { readonly json: boolean },
  terminal: Terminal,
  show: (report: Report, paint: Paint) => readonly string[],
): void {
  const text = json
    ? JSON.stringify(report, null, 2)
    : show(report, painter(terminal.colour)).join('\n');
  terminal.out(`${text}\n`);
}

/**
 * Colours that mark what the words already say: our own for the I, IV and V chords (green, violet,
 * amber), and one each for headings, side remarks and warnings.
 */
const INKS = {
  one: '32',
  four: '35',
  five: '33',
  heading: '1',
  remark: '2',
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
