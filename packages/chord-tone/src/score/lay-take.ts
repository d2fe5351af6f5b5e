import type { Chart, ChordSpan } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { itemAt, ReedplateError } from '@reedplate/pitch';
import { type Heard, moveEarlier } from './sounded.js';

/** A take laid on as many choruses of a chart as it has. */
export interface LaidTake {
  readonly chart: Chart;
  readonly notes: readonly Heard[];
}

/**
 * Lays a take on its chart. A take longer than the chart goes round: choruses are added as long as
 * none of them is empty, up to the bar of the last onset. Whole empty choruses before it are taken
 * off, as many as the chart can spare: a take and the same take a chorus later are one.
 */
export function layTake(chart: Chart, notes: readonly Heard[]): LaidTake {
  const chorus = lastChorus(chart);
  const chorusTicks = chorus.end - chorus.start;
  const { barTicks } = parseMetre(chart.metre);
  const first = notes[0]?.start ?? 0;
  const chartEnd = chorus.end;
  const lead =
    chart.intro === undefined ? Math.max(0, Math.floor((first - chart.pickup) / chorusTicks)) : 0;
  const past = goesRoundTo(
    notes,
    Math.max(chartEnd, chart.pickup + (lead + 1) * chorusTicks),
    chorusTicks,
  );
  const added = Math.round((past - chartEnd) / chorusTicks);
  if (added === 0) return { chart, notes };
  const skipped = Math.min(lead, added);
  const moved = moveEarlier(notes, skipped * chorusTicks);
  const end = past - skipped * chorusTicks;
  if (end <= chartEnd) return { chart, notes: moved };
  const last = itemAt(
    moved.filter(({ start }) => start < end),
    -1,
  );
  const bars = Math.floor((last.start - chart.pickup) / barTicks) + 1;
  return { chart: goRound(chart, chorus, bars), notes: moved };
}

interface Chorus {
  readonly start: number;
  readonly end: number;
  readonly spans: readonly ChordSpan[];
}

/** The last chorus of a chart: what comes after it is the same again. */
function lastChorus({ spans }: Chart): Chorus {
  const number = itemAt(spans, -1).chorus;
  const own = spans.filter(({ chorus }) => chorus === number);
  return { start: itemAt(own, 0).start, end: itemAt(own, -1).end, spans: own };
}

/** Where the choruses end that are played one after the other. */
function goesRoundTo(notes: readonly Heard[], from: number, chorusTicks: number): number {
  let end = from;
  for (const { start } of notes) {
    if (start < end) continue;
    if (start >= end + chorusTicks) break;
    end += chorusTicks;
  }
  return end;
}

/** The chart with its last chorus again and again, up to so many bars. */
function goRound(chart: Chart, chorus: Chorus, bars: number): Chart {
  const { barTicks } = parseMetre(chart.metre);
  const end = chart.pickup + bars * barTicks;
  const chorusBars = Math.round((chorus.end - chorus.start) / barTicks);
  const spans = [...chart.spans];
  let turn = 1;
  for (let from = chorus.end; from < end; from += chorus.end - chorus.start) {
    for (const span of chorus.spans) {
      const start = span.start - chorus.start + from;
      if (start >= end) break;
      spans.push({
        ...span,
        start,
        end: span.end - chorus.start + from,
        chorus: span.chorus + turn,
        bar: span.bar + turn * chorusBars,
      });
    }
    turn += 1;
  }
  return { ...chart, choruses: chart.choruses + turn - 1, bars, spans };
}

/**
 * The chart with chords in some bars alone: what stands in the others is not judged.
 *
 * @throws ReedplateError `NUMBER_RANGE` for bars that the chart does not have
 */
export function cropChart(chart: Chart, bars: readonly [number, number] | undefined): Chart {
  if (bars === undefined) return chart;
  const [from, to] = requireBars(bars, chart.bars);
  const spans = chart.spans.map((span) =>
    span.bar >= from && span.bar <= to ? span : { ...span, numeral: null, chord: null },
  );
  return { ...chart, spans };
}

function requireBars(bars: unknown, last: number): readonly [number, number] {
  const isPair = Array.isArray(bars) && bars.length === 2;
  const [from, to] = isPair ? (bars as unknown[]).map((bar) => requireBar(bar, last)) : [];
  if (from !== undefined && to !== undefined && from <= to) return [from, to];
  throw outOfRange(bars, `first and last bar, the earlier first, from 1 to ${last}`);
}

function requireBar(bar: unknown, last: number): number {
  if (typeof bar === 'number' && Number.isInteger(bar) && bar >= 1 && bar <= last) return bar;
  throw outOfRange(bar, `a bar of the chart, from 1 to ${last}`);
}

function outOfRange(value: unknown, expected: string): ReedplateError {
  return new ReedplateError({ code: 'NUMBER_RANGE', value, expected, where: { path: 'bars' } });
}
