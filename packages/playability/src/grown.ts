/** A longer table of numbers that begins as a table does. */
export function grown<Table extends Int32Array | Float64Array>(table: Table, size: number): Table {
  const longer = new (table.constructor as new (size: number) => Table)(size);
  longer.set(table);
  return longer;
}
