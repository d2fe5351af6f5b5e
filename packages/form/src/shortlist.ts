import { itemAt } from '@reedplate/pitch';

/** The cheapest of many things, kept while they come in. */
export interface Shortlist<Item> {
  /** Cheapest first; on equal cost as they came. */
  readonly items: (Item & { readonly cost: number })[];
  /** How many are wanted after those that share the least cost. */
  readonly runnersUp: number;
}

/** The most that something may cost and still be wanted. */
export function costLimit<Item>({ items, runnersUp }: Shortlist<Item>): number {
  return items[nearestCount(items) + runnersUp - 1]?.cost ?? Number.POSITIVE_INFINITY;
}

/** Adds an item in its place. */
export function addToShortlist<Item>(
  { items }: Shortlist<Item>,
  item: Item & { readonly cost: number },
): void {
  const after = items.findIndex(({ cost }) => cost > item.cost);
  items.splice(after === -1 ? items.length : after, 0, item);
}

/** How many share the least cost. */
export function nearestCount(items: readonly { readonly cost: number }[]): number {
  const after = items.findIndex(({ cost }) => cost > itemAt(items, 0).cost);
  return after === -1 ? items.length : after;
}
