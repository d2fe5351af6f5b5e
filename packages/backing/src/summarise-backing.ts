import { type Chart, chartEnd, type Feel, requireChart } from '@reedplate/form';
import type { Sheet } from '@reedplate/interchange';
import { type Metre, parseMetre, requireLine } from '@reedplate/line';
import { type KeyName, requireShape, requireShapes } from '@reedplate/pitch';

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

const BACKING = { what: 'a backing, as makeBacking gives it', code: 'CHART_INVALID' } as const;

/** Felt beats a minute where the chart has none: as `writeMidi` plays it. */
const USUAL_TEMPO = 96;

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
  const { chart, parts = [] } = requireShape(backing, { chart: 'object' }, BACKING);
  requireShapes(parts, { name: 'text', line: 'object' }, BACKING);
  for (const { line } of parts) requireLine(line);
  const song = requireChart(chart as Chart);
  const { form, key, metre, feel, tempo = USUAL_TEMPO, choruses, bars } = song;
  const seconds = (chartEnd(song) / parseMetre(metre).beatTicks / tempo) * 60;
  return Object.freeze({
    form,
    key,
    metre,
    feel,
    tempo,
    choruses,
    bars,
    seconds: Math.round(seconds * 1000) / 1000,
    parts: Object.freeze(
      parts.map(({ name, line }) => Object.freeze({ name, notes: line.notes.length })),
    ),
    cautions: BACKING_CAUTIONS,
  });
}
