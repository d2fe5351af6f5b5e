import type { Harp, SoundingOptions } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { itemAt } from '@reedplate/pitch';
import { type LaidOut, layOut } from './board.js';
import type { EffortModel } from './effort-model.js';
import { type LineTimes, lineTimes } from './line-times.js';

/** A line laid out on a harp: what a search is given. */
export interface Problem extends LaidOut {
  readonly times: LineTimes;
}

/** Which ways a search may go. */
export interface Limits {
  /** Most thousandths a step may cost (inclusive); default any. */
  readonly ceiling?: number;
  /** An event that must be sounded by one choice. */
  readonly forced?: { readonly event: number; readonly choice: number };
}

/** Lays a line out on a harp. */
export function makeProblem(
  line: Line,
  harp: Harp,
  model: EffortModel,
  setting: Required<Pick<SoundingOptions, 'level' | 'valved'>> & { readonly tempo?: number },
): Problem {
  const times = lineTimes(line, setting.tempo);
  return { times, ...layOut(times.sets, harp, model, setting) };
}

/** The choices that an event may take. */
export function waysAt({ times, ways }: Problem, event: number, { forced }: Limits) {
  if (forced?.event === event) return [forced.choice];
  return itemAt(ways, itemAt(times.set, event));
}
