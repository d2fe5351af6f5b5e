import { itemAt } from '@reedplate/pitch';
import { widestWord, widthOf, wrapLine, wrapWords } from './wrap.js';

/** A table's cells, row by row; short rows are filled with blanks. */
export type Rows = readonly (readonly string[])[];

/** A table to set within the width of a screen. */
export interface Table {
  /** What stands over the columns; default nothing. */
  readonly head?: readonly string[];
  readonly rows: Rows;
  /**
   * What becomes of a table that is too wide. `cells`: long cells go on below, within their column.
   * `columns`: as many columns as there is room for, then the others below, each time with the first
   * one, which says what the rows are. Default `cells`.
   */
  readonly wrap?: 'cells' | 'columns';
}

/** How wide a table may be, and how its head is marked. */
export interface Setting {
  readonly width: number;
  readonly heading: (text: string) => string;
}

const GAP = '  ';

/** Sets a table in lines no wider than the screen. */
export function setTable(
  { head, rows, wrap = 'cells' }: Table,
  { width, heading }: Setting,
): readonly string[] {
  const all = filled(head === undefined ? rows : [head, ...rows]);
  const headRows = all.length - rows.length;
  const widths = columnWidths(all, widthOf);
  if (total(widths) <= width) return headed(setRows(all, widths), headRows, heading);
  if (wrap === 'columns') return setBlocks(all, { width, heading }, headRows);
  const room = fitWidths(widths, columnWidths(all, widestWord), width);
  if (room === undefined) return setRecords(all, headRows, width);
  const set = all.map((row) => setWrapped(row, room));
  return headed(set.flat(), headRows === 0 ? 0 : itemAt(set, 0).length, heading);
}

/**
 * Sets rows in columns, each as wide as its widest cell, without trailing blanks.
 */
export function setColumns(rows: Rows): readonly string[] {
  const all = filled(rows);
  return setRows(all, columnWidths(all, widthOf));
}

/** Rows that all have as many cells, blank where there was none. */
function filled(rows: Rows): Rows {
  const count = Math.max(0, ...rows.map((row) => row.length));
  return rows.map((row) => [...row, ...Array<string>(count - row.length).fill('')]);
}

/** Width of a table whose columns are so wide. */
const total = (widths: readonly number[]): number =>
  widths.reduce((sum, width) => sum + width, 0) + GAP.length * Math.max(0, widths.length - 1);

function columnWidths(rows: Rows, measure: (cell: string) => number): readonly number[] {
  const [first = []] = rows;
  return first.map((_, column) => Math.max(...rows.map((row) => measure(itemAt(row, column)))));
}

function setRows(rows: Rows, widths: readonly number[]): readonly string[] {
  return rows.map((row) =>
    row
      .map((cell, column) => pad(cell, itemAt(widths, column)))
      .join(GAP)
      .trimEnd(),
  );
}

function pad(cell: string, width: number): string {
  return cell + ' '.repeat(Math.max(0, width - widthOf(cell)));
}

function headed(
  lines: readonly string[],
  headLines: number,
  heading: Setting['heading'],
): readonly string[] {
  return lines.map((line, at) => (at < headLines ? heading(line) : line));
}

/** Widths that fit, the widest column giving way first; none where words would have to be broken. */
function fitWidths(
  natural: readonly number[],
  least: readonly number[],
  width: number,
): readonly number[] | undefined {
  const widths = [...natural];
  while (total(widths) > width) {
    const shrinkable = widths.map((own, at) => (own > itemAt(least, at) ? own : 0));
    const widest = Math.max(...shrinkable);
    if (widest === 0) return undefined;
    widths[shrinkable.indexOf(widest)] = widest - 1;
  }
  return widths;
}

/** A row whose long cells go on below. */
function setWrapped(row: readonly string[], widths: readonly number[]): readonly string[] {
  const cells = row.map((cell, column) => {
    const width = itemAt(widths, column);
    return widthOf(cell) <= width ? [cell] : wrapWords(cell, width);
  });
  const height = Math.max(...cells.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    cells
      .map((lines, column) => pad(lines[line] ?? '', itemAt(widths, column)))
      .join(GAP)
      .trimEnd(),
  );
}

/** Blocks of as many columns as there is room for, each with the first column. */
function setBlocks(all: Rows, { width, heading }: Setting, headRows: number): readonly string[] {
  const widths = columnWidths(all, widthOf);
  const blocks: number[][] = [];
  for (const column of widths.keys()) {
    if (column === 0) continue;
    const block = blocks.at(-1);
    const longer = [0, ...(block ?? []), column].map((at) => itemAt(widths, at));
    if (block === undefined || total(longer) > width) blocks.push([column]);
    else block.push(column);
  }
  return blocks.flatMap((block, at) => {
    const columns = [0, ...block];
    const rows = all.map((row) => columns.map((column) => itemAt(row, column)));
    // A row that has nothing in these columns says nothing here.
    const told = rows.filter(
      (row, index) => index < headRows || row.slice(1).some((cell) => cell !== ''),
    );
    const lines = setColumns(told).flatMap((line) => wrapLine(line, width));
    return [...(at === 0 ? [] : ['']), ...headed(lines, headRows, heading)];
  });
}

/** A screen too narrow for columns: each row on its own, cells after what they are. */
function setRecords(all: Rows, headRows: number, width: number): readonly string[] {
  const [head] = all.slice(0, headRows);
  return all.slice(headRows).flatMap((row) => {
    const cells = row.flatMap((cell, column) => {
      return cell === '' ? [] : [`${head?.[column] ?? ''} ${cell}`.trimStart()];
    });
    return wrapLine(cells.join(', '), width);
  });
}
