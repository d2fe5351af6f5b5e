import { grown } from './grown.js';
import type { Lattice } from './lattice.js';
import type { Way } from './way.js';

/**
 * The states a search has reached, event by event: of each, what it cost, the air, the node and
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

/** States of a new table; it doubles as it fills. */
const FIRST_SIZE = 256;

/** A table that holds the beginning of a line: lungs half full, before the first node. */
export function beginLabels(): Labels {
  const labels = makeLabels(FIRST_SIZE);
  labels.count = 1;
  labels.node[0] = -1;
  return labels;
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
export function wayTo(labels: Labels, last: number, { events, choice }: Lattice): Way {
  const { cost, node, before } = labels;
  const choices = new Array<number>(events);
  let worst = 0;
  for (let at = last, event = events - 1; event >= 0; event -= 1) {
    const from = before[at] as number;
    choices[event] = choice[node[at] as number] as number;
    worst = Math.max(worst, (cost[at] as number) - (cost[from] as number));
    at = from;
  }
  return { choices, cost: cost[last] as number, worst };
}
