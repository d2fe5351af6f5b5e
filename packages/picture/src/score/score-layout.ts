import { lanesOf, layLabels, type PlacedLabel } from '../line/lay-labels.js';
import type { Frame } from '../svg/frame.js';
import { SMALLEST_TEXT } from '../svg/frame.js';
import { textWidth } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';
import { markOfClass } from './class-marks.js';
import type { TakeBar } from './score-bars.js';

/** A bar with its texts in place, counted from its left edge. */
export interface LaidBar {
  readonly bar: TakeBar;
  /** Symbols of its chords, above. */
  readonly names: readonly PlacedLabel[];
  /** Degrees of its notes, below. */
  readonly degrees: readonly PlacedLabel[];
}

/** Rows of bars. */
export interface ScoreLayout {
  readonly columns: number;
  readonly width: number;
  readonly size: number;
  readonly small: number;
  readonly rows: readonly (readonly LaidBar[])[];
}

/** Room at the sides of a bar. */
export const INSET = 5;
const MOST_LANES = 2;

/** Lays bars out, four a row or as many as leave their texts room. */
export function layScore(frame: Frame, bars: readonly TakeBar[]): ScoreLayout {
  const every = [4, 2, 1].map((columns) => layIn(frame, bars, columns, () => true));
  const roomy = every.find(isRoomy);
  // Where one bar a row is too narrow for every degree, those that matter most are left.
  return roomy ?? layIn(frame, bars, 1, isAmiss);
}

type Wanted = (note: TakeBar['notes'][number]['note']) => boolean;

const isAmiss: Wanted = (note) => ['unresolved', 'clash'].includes(markOfClass(note.class));

function isRoomy({ rows, width, small }: ScoreLayout): boolean {
  const least = textWidth('bar 00', small) + textWidth('100 %', small) + 4 * INSET;
  return (
    width >= least &&
    rows
      .flat()
      .every(({ names, degrees }) => lanesOf(names) === 1 && lanesOf(degrees) <= MOST_LANES)
  );
}

function layIn(
  frame: Frame,
  bars: readonly TakeBar[],
  columns: number,
  isWanted: Wanted,
): ScoreLayout {
  const size = frame.theme.textSize;
  const small = Math.max(SMALLEST_TEXT, size * 0.75);
  const width = (frame.right - frame.left) / columns;
  const laid = bars.map((bar) => layBar(bar, { width, size, small }, isWanted));
  const rows: LaidBar[][] = [];
  for (let at = 0; at < laid.length; at += columns) rows.push(laid.slice(at, at + columns));
  return { columns, width, size, small, rows };
}

type Sizes = Pick<ScoreLayout, 'width' | 'size' | 'small'>;

function layBar(bar: TakeBar, { width, size, small }: Sizes, isWanted: Wanted): LaidBar {
  const edge = { right: width - INSET, gap: small * 0.4 };
  const names = bar.chords.map((symbol, at) => {
    const text = withSigns(symbol);
    // The mark of the chord's step stands before its name.
    const wide = textWidth(text, size, 'bold') + size * 1.1;
    return { text, x: Math.max(INSET, shareOf(bar, symbol, at) * width), width: wide };
  });
  const degrees = bar.notes
    .filter(({ isStruck, note }) => isStruck && note.degree !== null && isWanted(note))
    .map(({ from, note }) => {
      const text = withSigns(note.degree ?? '');
      return { text, x: Math.max(INSET, from * width), width: textWidth(text, small) };
    });
  return { bar, names: layLabels(names, edge), degrees: layLabels(degrees, edge) };
}

/** Where a chord begins in its bar: where its change is, else in order. */
function shareOf({ changes, chords }: TakeBar, symbol: string, at: number): number {
  if (at === 0) return 0;
  const found = changes.find(({ change, share }) => change.chord === symbol && share > 0);
  return found?.share ?? at / chords.length;
}
