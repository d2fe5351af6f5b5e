import { itemAt, type Random } from '@reedplate/pitch';
import { doSteps, type Steps } from '@reedplate/playability';
import { drawIndex } from './draw-index.js';

/**
 * A chain of choices: one option at each place, and a weight for each option after the one before. The
 * chance of a chain is the product of its weights, among all those that keep the rules: a Markov model
 * under constraints. Pachet and Roy, Markov constraints: steerable generation of Markov sequences,
 * Constraints 16 (2011), 148-172; rules as automata after Papadopoulos, Pachet, Roy and Sakellariou,
 * Exact sampling for regular and Markov constraints with belief propagation, CP 2015.
 */
export interface Chain {
  /** Number of options at each place, 1 or more places. */
  readonly options: readonly number[];
  /** Weight of an option after `before`, which is -1 at the first place; 0 forbids it. */
  readonly weight: (place: number, before: number, option: number) => number;
  readonly rules: readonly Rule[];
}

/** What must hold of a whole chain, told place by place: a small automaton. */
export interface Rule {
  /** How many states it has: they are numbered from 0. */
  readonly states: number;
  readonly start: number;
  /** The state after an option, or `undefined` where it breaks the rule. */
  readonly next: (
    state: number,
    place: number,
    option: number,
    before: number,
  ) => number | undefined;
  /** Whether a chain may end in a state. */
  readonly ends: (state: number) => boolean;
}

/** An option with the states of all rules after it, and the ways on from it. */
interface Node {
  readonly option: number;
  readonly states: readonly number[];
  readonly next: number[];
  readonly weights: number[];
  /** Sum over all ends of the products of weights from here, up to one factor a place. */
  total: number;
}

/** All that can be drawn from a chain. */
export interface Draws {
  readonly first: readonly { readonly node: number; readonly weight: number }[];
  readonly layers: readonly (readonly Node[])[];
}

/**
 * Lays out every way through a chain that keeps its rules, and sums their weights from the end: layered
 * dynamic programming. `undefined` where no chain keeps them all. A step is a place.
 */
export function* laySteps(chain: Chain): Steps<Draws | undefined> {
  const layers: Node[][] = [];
  const first: { node: number; weight: number }[] = [];
  const start = chain.rules.map((rule) => rule.start);
  for (const [place, options] of chain.options.entries()) {
    const layer: Node[] = [];
    const byNumber = new Map<number, number>();
    const nodeFor = (option: number, states: readonly number[]): number => {
      const number = numberOf(states, chain.rules) * options + option;
      const known = byNumber.get(number);
      if (known !== undefined) return known;
      byNumber.set(number, layer.length);
      return layer.push({ option, states, next: [], weights: [], total: 0 }) - 1;
    };
    const arrive = (before: number, states: readonly number[], link: Link): void => {
      for (let option = 0; option < options; option += 1) {
        const weight = chain.weight(place, before, option);
        if (weight <= 0) continue;
        const after = statesAfter(chain.rules, states, place, option, before);
        if (after !== undefined) link(nodeFor(option, after), weight);
      }
    };
    if (place === 0) arrive(-1, start, (node, weight) => first.push({ node, weight }));
    for (const node of layers[place - 1] ?? []) {
      arrive(node.option, node.states, (next, weight) => {
        node.next.push(next);
        node.weights.push(weight);
      });
    }
    layers.push(layer);
    yield;
  }
  yield* sumFromTheEnd(layers, chain.rules);
  const possible = first.some(({ node }) => nodeAt(layers, 0, node).total > 0);
  return possible ? { first, layers } : undefined;
}

/** The same at once. */
export function layDraws(chain: Chain): Draws | undefined {
  return doSteps(laySteps(chain));
}

type Link = (node: number, weight: number) => void;

function statesAfter(
  rules: readonly Rule[],
  states: readonly number[],
  place: number,
  option: number,
  before: number,
): readonly number[] | undefined {
  const after: number[] = [];
  for (const [at, rule] of rules.entries()) {
    const state = rule.next(states[at] as number, place, option, before);
    if (state === undefined) return undefined;
    after.push(state);
  }
  return after;
}

/** The states of all rules as one number. */
function numberOf(states: readonly number[], rules: readonly Rule[]): number {
  let number = 0;
  for (const [at, rule] of rules.entries()) number = number * rule.states + (states[at] as number);
  return number;
}

function* sumFromTheEnd(layers: readonly Node[][], rules: readonly Rule[]): Steps<void> {
  for (const node of itemAt(layers, -1)) {
    node.total = rules.every((rule, at) => rule.ends(node.states[at] as number)) ? 1 : 0;
  }
  for (let place = layers.length - 2; place >= 0; place -= 1) {
    const after = layers[place + 1] as readonly Node[];
    // Each place is divided by its largest sum, so that no product leaves the range of numbers.
    const largest = after.reduce((most, { total }) => Math.max(most, total), 0) || 1;
    for (const node of layers[place] as readonly Node[]) {
      for (let at = 0; at < node.next.length; at += 1) {
        const { total } = after[node.next[at] as number] as Node;
        node.total += (node.weights[at] as number) * (total / largest);
      }
    }
    yield;
  }
}

function nodeAt(layers: Draws['layers'], place: number, node: number): Node {
  return itemAt(itemAt(layers, place), node);
}

/** One chain, drawn with exactly the chance that the model and the rules give it. */
export function drawChain({ first, layers }: Draws, random: Random): readonly number[] {
  const begin = drawIndex(
    first.map(({ node, weight }) => weight * nodeAt(layers, 0, node).total),
    random,
  );
  let node = nodeAt(layers, 0, itemAt(first, begin).node);
  const drawn = [node.option];
  for (let place = 1; place < layers.length; place += 1) {
    const { next, weights } = node;
    const chosen = drawIndex(
      next.map((after, at) => itemAt(weights, at) * nodeAt(layers, place, after).total),
      random,
    );
    node = nodeAt(layers, place, itemAt(next, chosen));
    drawn.push(node.option);
  }
  return drawn;
}

/** How many different chains can be drawn; exact to 2 ** 53. */
export function countChains({ first, layers }: Draws, rules: readonly Rule[]): number {
  let counts = itemAt(layers, -1).map(({ states }): number =>
    rules.every((rule, at) => rule.ends(states[at] as number)) ? 1 : 0,
  );
  for (let place = layers.length - 2; place >= 0; place -= 1) {
    const after = counts;
    counts = itemAt(layers, place).map(({ next }) =>
      next.reduce((sum, node) => sum + itemAt(after, node), 0),
    );
  }
  return first.reduce((sum, { node }) => sum + itemAt(counts, node), 0);
}
