/**
 * The states a search has reached, moment by moment: of each, what it cost, the air, the choice and
 * the state before. They stand in the order of ties: by choice, then by the order of the state
 * before. A plain growing table of numbers, for speed.
 */
export interface Labels {
  count: number;
  cost: Float64Array;
  air: Int32Array;
  choice: Int32Array;
  before: Int32Array;
}

/** A table that holds the beginning of a line: lungs half full, and `start` as its choice. */
export function beginLabels(size: number, start: number): Labels {
  const labels = {
    count: 1,
    cost: new Float64Array(size),
    air: new Int32Array(size),
    choice: new Int32Array(size),
    before: new Int32Array(size).fill(-1, 0, 1),
  };
  labels.choice[0] = start;
  return labels;
}

/** Adds a state. */
export function addLabel(
  labels: Labels,
  cost: number,
  air: number,
  choice: number,
  before: number,
): void {
  const at = labels.count;
  if (at === labels.cost.length) grow(labels);
  labels.cost[at] = cost;
  labels.air[at] = air;
  labels.choice[at] = choice;
  labels.before[at] = before;
  labels.count = at + 1;
}

function grow(labels: Labels): void {
  const size = labels.cost.length * 2;
  const cost = new Float64Array(size);
  cost.set(labels.cost);
  labels.cost = cost;
  for (const name of ['air', 'choice', 'before'] as const) {
    const wider = new Int32Array(size);
    wider.set(labels[name]);
    labels[name] = wider;
  }
}

/** The choices that led to a state, from the first moment on. */
export function choicesTo({ choice, before }: Labels, last: number): readonly number[] {
  const found: number[] = [];
  for (let at = last; (before[at] ?? -1) >= 0; at = before[at] ?? -1) found.push(choice[at] ?? -1);
  return found.reverse();
}
