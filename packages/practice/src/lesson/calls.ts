import type { Chart } from '@reedplate/form';
import type { Sounding } from '@reedplate/layout';
import { type Line, parseMetre } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import { type ComposedLine, composeLine } from '../compose/compose-line.js';
import type { MaterialGround } from './material.js';

/** Calls to be answered. */
export interface Calls {
  readonly line: Line;
  readonly soundings: readonly (readonly Sounding[])[];
  /** Whether each phrase of four bars has two bars of rest for an answer; else the chorus is whole. */
  readonly answers: boolean;
}

const PHRASE_BARS = 4;
const SEEDS = [1, 2, 3, 4, 5, 6] as const;

/**
 * Calls over a chart: of a composed chorus of phrases of four bars the first two bars of each; the other two are for
 * the answer (Lavengood, M., in Open Music Theory, 2nd edition, "Blues Melodies and the Blues Scale"). A chorus of other
 * phrases is left whole. The first of a few whose notes all end within their bars, which is easier to read; undefined
 * where the player has no chorus on this harp.
 */
export function callsOver(ground: Omit<MaterialGround, 'phrases'>): Calls | undefined {
  let first: Calls | undefined;
  for (const seed of SEEDS) {
    const composed = composeIfPossible(ground, seed);
    if (composed === undefined) return first;
    const calls = callsOf(composed, ground.chart);
    if (staysInBars(calls.line)) return calls;
    first ??= calls;
  }
  return first;
}

function callsOf({ line, steps }: ComposedLine, { metre, bars, pickup }: Chart): Calls {
  const answers = bars % PHRASE_BARS === 0;
  if (!answers) {
    return { line, soundings: steps.map(({ sounding }) => [sounding]), answers };
  }
  const phrase = PHRASE_BARS * parseMetre(metre).barTicks;
  const left = (start: number): number => phrase / 2 - ((start - pickup) % phrase);
  const notes = line.notes
    .filter(({ start }) => left(start) > 0)
    .map((note) => ({ ...note, duration: Math.min(note.duration, left(note.start)) }));
  const soundings = steps.filter(({ start }) => left(start) > 0).map(({ sounding }) => [sounding]);
  return { line: { ...line, notes }, soundings, answers };
}

function staysInBars({ metre, pickup, notes }: Line): boolean {
  const { barTicks } = parseMetre(metre);
  return notes.every(({ start, duration }) => {
    const inBar = (start - (pickup ?? 0) + barTicks) % barTicks;
    return inBar + duration <= barTicks;
  });
}

function composeIfPossible(
  { chart, harp, level }: Omit<MaterialGround, 'phrases'>,
  seed: number,
): ComposedLine | undefined {
  try {
    return composeLine(chart, harp, { seed, level });
  } catch (error) {
    if (isReedplateError(error) && error.code === 'COMPOSE_IMPOSSIBLE') return undefined;
    throw error;
  }
}
