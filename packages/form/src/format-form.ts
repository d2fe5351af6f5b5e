import {
  chordOfNumeral,
  itemAt,
  type KeyLike,
  type OptionNames,
  requireInteger,
  requireOptions,
  toKey,
} from '@reedplate/pitch';
import { type FormLike, type KnownForms, toForm } from './to-form.js';
import type { Feel, Form, FormBar } from './types.js';

/** How {@link formatForm} writes. */
export interface FormatFormOptions {
  /** With a key chords are written by name; without, the default, as numerals. */
  readonly key?: KeyLike;
  /** Bars to a line of text, from 1; default 4. */
  readonly barsPerLine?: number;
  /** Forms of one's own that are known by their id. */
  readonly known?: KnownForms;
}

const FORMAT_OPTIONS: OptionNames<FormatFormOptions> = {
  key: true,
  barsPerLine: true,
  known: true,
};

const FEEL_WORDS: Readonly<Record<Feel, string>> = {
  straight: 'straight',
  shuffle: 'shuffle',
  'slow-12/8': 'slow',
};

/**
 * Writes a form in the marks that {@link parseForm} reads, four bars to a line and bar lines under
 * each other. Feel and metre come first, unless they are a shuffle in 4/4. A bar like the one
 * before it on its line is written `%`; repeats are written out.
 *
 * @throws ReedplateError `KEY_UNKNOWN`, `NUMBER_RANGE`
 * @example
 * ```ts
 * import { formatForm, parseForm } from '@reedplate/form';
 *
 * formatForm(parseForm('I7 | I7 | IV7 / / V7')); // => '| I7 | % | IV7 / / V7 |'
 * formatForm(parseForm('slow 12/8 | i7 |'), { key: 'A' }); // => 'slow 12/8\n| Am7 |'
 * formatForm('basic', { barsPerLine: 0 }); // throws NUMBER_RANGE
 * ```
 */
export function formatForm(given: FormLike, options: FormatFormOptions = {}): string {
  const { key, barsPerLine = 4, known } = requireOptions(options, FORMAT_OPTIONS, 'formatForm');
  const form = toForm(given, known);
  const perLine = requireInteger(barsPerLine, { min: 1, what: 'bars to a line' });
  const write = chordWriter(key);
  const lines = linesOf(form.bars, perLine).map((bars) => barTexts(bars, write));
  const widths = columnWidths(lines);
  const body = lines.map((bars) => bars.map((bar, at) => ` ${bar.padEnd(itemAt(widths, at))} `));
  return [...headLine(form), ...body.map((bars) => `|${bars.join('|')}|`)].join('\n');
}

type ChordWriter = (numeral: string) => string;

function chordWriter(key: KeyLike | undefined): ChordWriter {
  if (key === undefined) return (numeral) => numeral;
  const home = toKey(key);
  return (numeral) => chordOfNumeral(numeral, home).symbol;
}

function headLine({ feel, metre }: Form): readonly string[] {
  return feel === 'shuffle' && metre === '4/4' ? [] : [`${FEEL_WORDS[feel]} ${metre}`];
}

function linesOf(bars: readonly FormBar[], perLine: number): readonly (readonly FormBar[])[] {
  const count = Math.ceil(bars.length / perLine);
  return Array.from({ length: count }, (_, line) =>
    bars.slice(line * perLine, (line + 1) * perLine),
  );
}

function barTexts(bars: readonly FormBar[], write: ChordWriter): readonly string[] {
  const texts = bars.map((bar) => barText(bar, write));
  return texts.map((text, at) => (text === texts[at - 1] ? '%' : text));
}

/** A bar in lead-sheet marks, each chord as `write` has it. */
export function barText(bar: FormBar, write: (numeral: string) => string): string {
  const marks = bar.flatMap(({ numeral, weight }) => [
    numeral === null ? 'N.C.' : write(numeral),
    ...Array.from({ length: weight - 1 }, () => '/'),
  ]);
  return marks.join(' ');
}

function columnWidths(lines: readonly (readonly string[])[]): readonly number[] {
  const widths: number[] = [];
  for (const bars of lines) {
    for (const [at, bar] of bars.entries()) widths[at] = Math.max(widths[at] ?? 0, bar.length);
  }
  return widths;
}
