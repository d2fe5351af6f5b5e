import {
  type Chart,
  type ChordSpan,
  chartEnd,
  chordChanges,
  nextChange,
  previousChange,
} from '@reedplate/form';
import type { HarpLike, KnownTunings, PlayerLike } from '@reedplate/layout';
import { barBeatAt, foldTick, type Loop, tickAtSeconds } from '@reedplate/line';
import { type OptionNames, ReedplateError, requireOptions, requireShape } from '@reedplate/pitch';
import { checkChart } from './check-chart.js';
import { type Target, targetsOf } from './target.js';

/** A place in a chart that goes round: a tick or a second, counted on without end. */
export type ChartPlace = { readonly tick: number } | { readonly seconds: number };

/** How {@link chordNow} looks. */
export interface ChordNowOptions {
  /** The harp whose targets are wanted; default none, and then there are none. */
  readonly harp?: HarpLike;
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
  /** What goes round; default all from bar 1 of the first chorus to the end, so that an intro is played once. */
  readonly loop?: Loop;
}

const PLACE = 'a place, by its tick or its seconds';

const CHORD_NOW_OPTIONS: OptionNames<ChordNowOptions> = {
  harp: true,
  level: true,
  known: true,
  loop: true,
};

/** What is on at a moment of a chart, and what comes next: all that a page that follows the band shows. */
export interface ChordNow {
  /** Tick as written in the chart. */
  readonly tick: number;
  /** Time through the loop, from 1. */
  readonly pass: number;
  readonly bar: number;
  /** Beat of the bar, from 1, with its fraction. */
  readonly beat: number;
  /** The chord that sounds, from where it was reached; null in a pickup, its `chord` null in a break. */
  readonly now: ChordSpan | null;
  /** The next other chord, round the corner of the loop too; null where none comes. */
  readonly next: ChordSpan | null;
  /** Ticks until the next chord; null where none comes. */
  readonly ticksLeft: number | null;
  /** Where the tones of the chord lie, in the order of the holes. */
  readonly targets: readonly Target[];
  readonly nextTargets: readonly Target[];
}

/**
 * What is on now: the chord, the next one, how long it is until then, and where both lie on the harp.
 *
 * @throws ReedplateError `CHART_INVALID`; `NUMBER_RANGE` for a place before the beginning; `TEMPO_MISSING` for
 *   seconds in a chart without a tempo; `OPTION_UNKNOWN` for the level
 * @example
 * ```ts
 * import { chordNow } from '@reedplate/chord-tone';
 * import { makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('basic', 'G');
 * const { now, next, ticksLeft, nextTargets } = chordNow(chart, { tick: 11520 }, { harp: 'C' });
 * [now?.chord?.symbol, next?.chord?.symbol, ticksLeft]; // => ['G7', 'C7', 3840]
 * nextTargets.find(({ degree }) => degree === '1')?.sounding.hole; // => 1
 * chordNow(chart, { tick: -1 }); // throws NUMBER_RANGE
 * ```
 */
export function chordNow(chart: Chart, place: ChartPlace, options: ChordNowOptions = {}): ChordNow {
  const given = requireOptions(options, CHORD_NOW_OPTIONS, 'chordNow');
  requireShape(place, {}, { what: PLACE, code: 'NUMBER_RANGE' });
  const { harp, loop = choruses(checkChart(chart)), ...player } = given;
  const { tick, pass } = foldTick(tickOf(place, chart, loop), loop);
  const changes = chordChanges(chart);
  const now = previousChange(changes, tick) ?? null;
  const coming = comingChange(changes, tick, loop);
  const targets = ({ chord }: ChordSpan): readonly Target[] =>
    harp === undefined || chord === null ? NONE : targetsOf(chord, harp, player);
  return Object.freeze({
    tick,
    pass,
    ...barBeatAt(tick, chart),
    now,
    next: coming?.change ?? null,
    ticksLeft: coming === undefined ? null : coming.at - tick,
    targets: now === null ? [] : targets(now),
    nextTargets: coming === undefined ? [] : targets(coming.change),
  });
}

/** All choruses of a chart: what a band plays again and again. */
const NONE: readonly Target[] = Object.freeze([]);

function choruses(chart: Chart): Loop {
  const first = chart.spans.find(({ chorus }) => chorus === 1);
  return { start: first?.start ?? chart.pickup, end: chartEnd(chart) };
}

function tickOf(place: ChartPlace, chart: Chart, loop: Loop): number {
  if ('tick' in place) return place.tick;
  if ('seconds' in place) return tickAtSeconds(place.seconds, chart, { loop });
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: place,
    expected: PLACE,
  });
}

/** The next change that sounds, and the tick until which it is counted: past the loop's end it comes from its beginning. */
function comingChange(
  changes: readonly ChordSpan[],
  tick: number,
  { start, end }: Loop,
): { readonly change: ChordSpan; readonly at: number } | undefined {
  const ahead = nextChange(changes, tick);
  if (ahead !== undefined && ahead.start < end) return { change: ahead, at: ahead.start };
  const sounding = previousChange(changes, tick)?.chord?.symbol;
  const again = previousChange(changes, start);
  const length = end - start;
  if (again !== undefined && again.chord?.symbol !== sounding) return { change: again, at: end };
  // The loop begins with the chord it ends on, which is then held round the corner.
  const after = nextChange(changes, start);
  if (after === undefined || after.start >= end) return undefined;
  return { change: after, at: after.start + length };
}
