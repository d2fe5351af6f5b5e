/** A table's cells, row by row; short rows are filled with blanks. */
export type Rows = readonly (readonly string[])[];

const GAP = '  ';

/**
 * Sets rows in columns, each as wide as its widest cell, without trailing blanks. Cells are
 * measured in code points, so colour goes on after setting.
 */
export function setColumns(rows: Rows): readonly string[] {
  const widths = columnWidths(rows);
  return rows.map((row) =>
    widths
      .map((width, column) => pad(row[column] ?? '', width))
      .join(GAP)
      .trimEnd(),
  );
}

function columnWidths(rows: Rows): readonly number[] {
  const count = Math.max(0, ...rows.map((row) => row.length));
  return Array.from({ length: count }, (_, column) =>
    Math.max(...rows.map((row) => [...(row[column] ?? '')].length)),
  );
}

function pad(cell: string, width: number): string {
  return cell + ' '.repeat(width - [...cell].length);
}
