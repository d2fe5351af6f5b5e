import { grown } from './grown.js';
import type { Lattice } from './lattice.js';
import type { Way } from './way.js';

/**
 * The states a search has reached, moment by moment: of each, what it cost, the air, the node and
 * the state before. They stand in the order of ties: by node, then by the order of the state
 * before. A plain growing table of numbers, for speed.
 */
export interface Labels {
  count: number;
  cost: Float64Array;
  air: Int32Array;
  node: Int32Array;
  before: Int32Array;
}

/** States of a new table: enough for a few hundred notes. */
const USUAL_SIZE = 4096;
/** Largest table that is kept from one search to the next: about three megabytes. */
const LARGEST_KEPT = 131_072;

/** The table of the last search. Making one costs as much as searching 100 notes. */
let kept: Labels | undefined;

/**
 * A table that holds the beginning of a line: lungs half full, before the first node. It is
 * good until the next search begins, since no search runs within another.
 */
export function beginLabels(): Labels {
  if (kept === undefined || kept.cost.length > LARGEST_KEPT) kept = makeLabels(USUAL_SIZE);
  kept.count = 1;
  kept.cost[0] = 0;
  kept.air[0] = 0;
  kept.node[0] = -1;
  return kept;
}

function makeLabels(size: number): Labels {
  return {
    count: 0,
    cost: new Float64Array(size),
    air: new Int32Array(size),
    node: new Int32Array(size),
    before: new Int32Array(size),
  };
}

/** Makes room for more states; the columns may be new ones afterwards. */
export function makeRoom(labels: Labels, more: number): void {
  while (labels.count + more > labels.cost.length) grow(labels);
}

function grow(labels: Labels): void {
  const size = labels.cost.length * 2;
  labels.cost = grown(labels.cost, size);
  for (const name of ['air', 'node', 'before'] as const) labels[name] = grown(labels[name], size);
}

/** The way that led to a state. */
export function wayTo(labels: Labels, last: number, { moments, choice }: Lattice): Way {
  const { cost, node, before } = labels;
  const choices = new Array<number>(moments);
  let worst = 0;
  for (let at = last, moment = moments - 1; moment >= 0; moment -= 1) {
    const from = before[at] as number;
    choices[moment] = choice[node[at] as number] as number;
    worst = Math.max(worst, (cost[at] as number) - (cost[from] as number));
    at = from;
  }
  return { choices, cost: cost[last] as number, worst };
}
