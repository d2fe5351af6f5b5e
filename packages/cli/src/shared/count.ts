/** A number of things in words: `1 chorus`, `2 choruses`. */
export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}
