/** Writers of bytes give what any API takes, and none of them takes frozen bytes. */
const isBytes = (value: unknown): boolean => ArrayBuffer.isView(value);

/** Where something can still be written to, by its path. */
export function looseIn(value: unknown, path = ''): readonly string[] {
  if (typeof value !== 'object' || value === null || isBytes(value)) return [];
  if (!Object.isFrozen(value)) return [path === '' ? 'the result' : path];
  return Object.entries(value).flatMap(([field, held]) => looseIn(held, `${path}.${field}`));
}
