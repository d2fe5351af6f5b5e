import type { BarWord, TabBar } from './tab-bars.js';

/** Bars on a row. */
const BARS_A_ROW = 4;

/**
 * Sets bars in rows of four, chords above tab, so that each chord stands over the note that sounds with it
 * and bar lines stand one below another. A single bar without a chord is a row of tab alone.
 */
export function setBars(bars: readonly TabBar[], hasPickup: boolean): readonly string[] {
  const cells = bars.map(setBar);
  const [only] = cells;
  if (cells.length === 1 && only?.chords === '') return [only.tab];
  const [pickup, whole] = hasPickup ? [cells[0], cells.slice(1)] : [undefined, cells];
  const widths = Array.from({ length: BARS_A_ROW }, (_, column) =>
    Math.max(0, ...whole.filter((_cell, at) => at % BARS_A_ROW === column).map(widthOf)),
  );
  const before = pickup === undefined ? 0 : widthOf(pickup);
  const hasChords = cells.some(({ chords }) => chords !== '');
  const systems: string[] = [];
  for (let at = 0; at < Math.max(1, whole.length); at += BARS_A_ROW) {
    const row = whole.slice(at, at + BARS_A_ROW);
    const set = (part: keyof Cell): string => {
      const own = row.map((cell, column) => pad(cell[part], widths[column] ?? 0));
      if (pickup === undefined) return `${own.join(' | ')} |`;
      // Later rows are moved in by as much as the pickup takes.
      const first = at === 0 ? `${pad(pickup[part], before)} | ` : ' '.repeat(before + 3);
      return `${first}${own.map((text) => `${text} |`).join(' ')}`.trimEnd();
    };
    if (at > 0 && hasChords) systems.push('');
    if (hasChords) systems.push(set('chords'));
    systems.push(set('tab'));
  }
  return systems;
}

interface Cell {
  readonly chords: string;
  readonly tab: string;
}

/** A bar as two texts in which each chord stands over the word of tab at its time or after. */
function setBar({ tab, chords }: TabBar): Cell {
  const columns: { offset: number; column: number }[] = [];
  let tabText = '';
  for (const { offset, text } of tab) {
    if (tabText !== '') tabText += ' ';
    columns.push({ offset, column: lengthOf(tabText) });
    tabText += text;
  }
  return { tab: tabText, chords: chords.reduce(over(columns), '') };
}

function over(columns: readonly { readonly offset: number; readonly column: number }[]) {
  return (row: string, { offset, text }: BarWord): string => {
    const least = row === '' ? 0 : row.length + 1;
    const column = columns.find((each) => each.offset >= offset)?.column ?? least;
    return row.padEnd(Math.max(least, column)) + text;
  };
}

const widthOf = ({ chords, tab }: Cell): number => Math.max(chords.length, lengthOf(tab));

/** Characters that take room: a line under a figure takes none. */
function lengthOf(text: string): number {
  return text.replace(/\p{M}/gu, '').length;
}

function pad(text: string, width: number): string {
  return text + ' '.repeat(Math.max(0, width - lengthOf(text)));
}
