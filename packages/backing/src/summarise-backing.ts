import { chartEnd, type Feel } from '@reedplate/form';
import type { Sheet } from '@reedplate/interchange';
import { type Metre, parseMetre, secondsAt } from '@reedplate/line';
import type { KeyName } from '@reedplate/pitch';
import { requireBacking, USUAL_TEMPO } from './require-backing.js';

/** A part of a backing. */
export interface BackingPart {
  readonly name: string;
  readonly notes: number;
}

/** What a backing plays, and for how long. */
export interface BackingSummary {
  /** Id of the form. */
  readonly form: string;
  readonly key: KeyName;
  readonly metre: Metre;
  readonly feel: Feel;
  /** Felt beats a minute. */
  readonly tempo: number;
  readonly choruses: number;
  /** Count-in and ending included. */
  readonly bars: number;
  readonly seconds: number;
  readonly parts: readonly BackingPart[];
  /** What to mind while playing along. */
  readonly cautions: readonly string[];
}

/** Common practice. How loud for how long is for those to say who treat hearing, not for us. */
export const BACKING_CAUTIONS: readonly string[] = Object.freeze([
  'Keep the volume low and take breaks: long loud practice, above all with an amplifier, harms hearing. If in doubt, ask a doctor or an audiologist.',
]);

/**
 * What a backing plays, and for how long.
 *
 * @throws ReedplateError `CHART_INVALID` for a sheet without a chart
 * @example
 * ```ts
 * import { makeBacking, summariseBacking } from '@reedplate/backing';
 * import { formById, makeChart } from '@reedplate/form';
 *
 * const chart = makeChart(formById('basic'), 'G', { tempo: 120 });
 * const { bars, seconds } = summariseBacking(makeBacking(chart));
 * [bars, seconds]; // => [14, 28]
 * ```
 */
export function summariseBacking(backing: Sheet): BackingSummary {
  const { line, chart, parts } = requireBacking(backing);
  const { form, key, metre, feel, tempo = USUAL_TEMPO, choruses, bars } = chart;
  const { countIn = 0, tempoChanges = [] } = line;
  const end = countIn * parseMetre(metre).barTicks + chartEnd(chart);
  const seconds = secondsAt(end, { metre, tempo, tempoChanges });
  return Object.freeze({
    form,
    key,
    metre,
    feel,
    tempo,
    choruses,
    bars: bars + countIn,
    seconds: Math.round(seconds * 1000) / 1000,
    parts: Object.freeze(
      parts.map(({ name, line }) => Object.freeze({ name, notes: line.notes.length })),
    ),
    cautions: BACKING_CAUTIONS,
  });
}
