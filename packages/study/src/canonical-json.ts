/** JSON with the fields of every object in the order of their names, so that equal data gives equal text. */
export function canonicalJson(value: unknown): string {
  return JSON.stringify(value, (_, part: unknown) => (isFields(part) ? sorted(part) : part));
}

type Fields = Readonly<Record<string, unknown>>;

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function sorted(fields: Fields): Fields {
  return Object.fromEntries(Object.entries(fields).sort(([a], [b]) => (a < b ? -1 : 1)));
}
