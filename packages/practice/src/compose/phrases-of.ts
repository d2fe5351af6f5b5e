import type { Chart, ChordSpan } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { type Chord, ReedplateError } from '@reedplate/pitch';

/** A phrase of a chorus: its letter in the plan, and where it lies. */
export interface PhrasePlace {
  readonly letter: string;
  readonly start: number;
  readonly bars: number;
  /** Chord spans it lies over, cut to it. */
  readonly spans: readonly ChordSpan[];
  /** Whether a chorus ends with it. */
  readonly isLast: boolean;
}

const FOUR = 4;

/**
 * The plan of a chorus where none is given: AAB over twelve bars, else another letter every four, two or one;
 * a single phrase where the letters do not last.
 */
export function usualPlan(bars: number): string {
  if (bars === 3 * FOUR) return 'AAB';
  const length = [FOUR, 2, 1].find((each) => bars % each === 0 && bars / each <= ALPHABET.length);
  return ALPHABET.slice(0, bars / (length ?? bars));
}

/** Bars of a chorus, an introduction left out. */
export function barsPerChorus({ choruses, intro = 0, bars }: Chart): number {
  return (bars - intro) / choruses;
}

const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const PLAN = /^[A-Z]{1,26}$/u;

/**
 * The phrases of every chorus of a chart, by a plan such as `AAB`, each letter as many bars: for each
 * letter of each chorus the places where it is played.
 */
export function phrasesOf(chart: Chart, plan: string): readonly (readonly PhrasePlace[])[] {
  const { barTicks } = parseMetre(chart.metre);
  const { choruses, intro = 0, pickup } = chart;
  const length = barsPerChorus(chart) / plan.length;
  const groups = new Map<string, PhrasePlace[]>();
  let first = 0;
  for (let at = 0; at < choruses * plan.length; at += 1) {
    const letter = plan[at % plan.length] as string;
    const start = pickup + (intro + at * length) * barTicks;
    const end = start + length * barTicks;
    // Spans and phrases both come in order: a long chart is gone through once.
    while ((chart.spans[first]?.end ?? end) <= start) first += 1;
    let after = first;
    while ((chart.spans[after]?.start ?? end) < end) after += 1;
    const spans = chart.spans.slice(first, after);
    const isLast = at % plan.length === plan.length - 1;
    const name = `${Math.floor(at / plan.length)} ${letter}`;
    const group = groups.get(name) ?? [];
    groups.set(name, group);
    group.push({ letter, start, bars: length, spans, isLast });
  }
  return [...groups.values()];
}

/** The chord at a tick of a place; null over none. */
export function chordIn({ spans }: PhrasePlace, tick: number): Chord | null {
  return spans.find(({ start, end }) => start <= tick && tick < end)?.chord ?? null;
}

/**
 * A plan that divides a chorus.
 *
 * @throws ReedplateError `COMPOSE_INVALID`
 */
export function requirePlan(plan: string, bars: number): string {
  if (typeof plan === 'string' && PLAN.test(plan) && bars % plan.length === 0) return plan;
  throw new ReedplateError({
    code: 'COMPOSE_INVALID',
    value: plan,
    expected: `a plan in capital letters that divides ${bars} bars, such as ${usualPlan(bars)}`,
    where: { path: 'plan' },
  });
}
