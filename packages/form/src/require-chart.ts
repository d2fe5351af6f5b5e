import { parseMetre } from '@reedplate/line';
import {
  asErrorOf,
  ReedplateError,
  requireChord,
  requireInteger,
  requireShape,
  type Shape,
  toKey,
} from '@reedplate/pitch';
import { requireTempo } from './make-chart.js';
import { toFeel } from './to-feel.js';
import type { Chart, ChordSpan } from './types.js';

const CODE = 'CHART_INVALID';
const CHART: Shape<Chart> = {
  form: 'text',
  key: 'text',
  choruses: 'number',
  pickup: 'number',
  bars: 'number',
  spans: 'list',
};
const WHAT = 'a chart, as makeChart gives it';

/**
 * The chart itself, if its fields are those of one: what a function asks that looks at one place of it.
 *
 * @throws ReedplateError `CHART_INVALID`
 */
export function requireChartShape(chart: Chart): Chart {
  return requireShape(chart, CHART, { what: WHAT, code: CODE });
}

/**
 * The chart itself, if it can be played: its spans in order and without gap, each within its bar. A
 * chart may come from JSON, so each is looked at. That its chords are those of its numerals and key is
 * for {@link readChart} to check.
 *
 * @internal
 * @throws ReedplateError `CHART_INVALID` with `where.path`
 * @example
 * ```ts
 * import { makeChart, requireChart } from '@reedplate/form';
 *
 * requireChart(makeChart('basic', 'G')).bars; // => 12
 * requireChart('basic' as never); // throws CHART_INVALID
 * ```
 */
export function requireChart(chart: Chart): Chart {
  const { key, metre, feel, tempo, pickup, bars, spans } = requireChartShape(chart);
  asErrorOf(CODE, { path: 'key' }, () => toKey(key));
  const { barTicks } = asErrorOf(CODE, { path: 'metre' }, () => parseMetre(metre));
  asErrorOf(CODE, { path: 'feel' }, () => toFeel(feel));
  if (tempo !== undefined) asErrorOf(CODE, { path: 'tempo' }, () => requireTempo(tempo));
  requireCount(pickup, 0, 'pickup', barTicks - 1);
  requireCount(chart.choruses, 1, 'choruses');
  if (chart.intro !== undefined) requireCount(chart.intro, 1, 'intro');
  let time = pickup;
  for (const [index, span] of spans.entries()) {
    checkSpan(span, { time, pickup, barTicks, path: `spans[${index}]` });
    time = span.end;
  }
  const end = pickup + requireCount(bars, 1, 'bars') * barTicks;
  if (time === end) return chart;
  const expected = `spans that end with the last bar, at tick ${end}`;
  throw new ReedplateError({ code: CODE, value: time, expected, where: { path: 'spans' } });
}

interface SpanPlace {
  /** Where the span before ends. */
  readonly time: number;
  readonly pickup: number;
  readonly barTicks: number;
  readonly path: string;
}

function checkSpan(span: ChordSpan, { time, pickup, barTicks, path }: SpanPlace): void {
  const what = 'a chord span of a chart';
  requireShape(span, { barOfForm: 'number', beat: 'number' }, { what, code: CODE, path });
  const { start, end, chorus, bar, numeral, chord } = span;
  requireCount(start, time, `${path}.start`, time);
  const barsBefore = Math.floor((start - pickup) / barTicks);
  requireCount(end, start + 1, `${path}.end`, pickup + (barsBefore + 1) * barTicks);
  requireCount(chorus, 0, `${path}.chorus`);
  requireCount(bar, barsBefore + 1, `${path}.bar`, barsBefore + 1);
  requireShape(
    { numeral: numeral ?? '', chord: chord ?? {} },
    { numeral: 'text', chord: 'object' },
    { what: 'a numeral and its chord, or null', code: CODE, path },
  );
  if (chord !== null) requireChord(chord, { code: CODE, path: `${path}.chord` });
}

function requireCount(value: unknown, min: number, path: string, max?: number): number {
  const bounds = max === undefined ? { min } : { min, max };
  return requireInteger(value, {
    ...bounds,
    what: /(?:start|end|pickup)$/u.test(path) ? 'ticks' : 'a count',
    code: CODE,
    where: { path },
  });
}
