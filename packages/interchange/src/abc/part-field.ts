/** Most parts that an order may name. */
const MOST_PARTS = 1000;

const LETTER = /([A-Za-z])(\d{1,3})/gu;
const INNERMOST = /\(([A-Za-z]*)\)(\d{0,3})/gu;

/**
 * Reads a `P:` field of the head: letters, each or a group in brackets with how often it is played, as
 * in `A2(BC)3`; `undefined` where it is no such order or names more than 1,000 parts. ABC 2.1, P: parts.
 */
export function readPartOrder(text: string): readonly string[] | undefined {
  const signs = text.replaceAll(/[\s.]/gu, '');
  let order = signs.length > MOST_PARTS ? '' : signs.replaceAll(LETTER, repeat);
  while (order.length <= MOST_PARTS && INNERMOST.test(order)) {
    order = order.replaceAll(INNERMOST, repeat);
  }
  return order.length <= MOST_PARTS && /^[A-Za-z]+$/u.test(order) ? [...order] : undefined;
}

function repeat(_: string, letters: string, count: string): string {
  return letters.repeat(count === '' ? 1 : Number(count));
}
