import { type Chart, type ChordSpan, requireChart } from '@reedplate/form';
import type { Sheet } from '@reedplate/interchange';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import {
  type Chord,
  deepFreeze,
  itemAt,
  type OptionNames,
  requireInteger,
  requireOptions,
} from '@reedplate/pitch';
import type { Groove } from './groove.js';
import type { GrooveId } from './grooves.js';
import { playBand } from './play-band.js';
import { toGroove } from './to-groove.js';

/** How one part of a band is played. */
export interface PartOptions {
  /** Whether it is left out. Default `false`. */
  readonly mute?: boolean;
  /** Loudness beside that of the groove, above 0 to 2. Default 1. */
  readonly level?: number;
  /** General MIDI program, counted from 1. Default 34 for the bass, 28 for the chords. */
  readonly program?: number;
}

/** What a backing has besides the chart's choruses. */
export interface BackingOptions {
  /** A groove, or its id. Default by the feel and metre of the chart. */
  readonly groove?: GrooveId | Groove;
  /** How each part is played. */
  readonly bass?: PartOptions;
  readonly comping?: PartOptions;
  readonly drums?: Omit<PartOptions, 'program'>;
  /** Any whole number: fills and walks are drawn from it, the same each time. Default 1. */
  readonly seed?: number;
  /** Whether chords and bass rest in every other four bars, for trading fours. Default `false`. */
  readonly trade?: boolean;
  /** Bars counted in, 0 to 8; default 1. A pickup of the line falls into the last of them. */
  readonly countIn?: number;
  /** Whether a bar of the tonic chord ends it; default true. */
  readonly ending?: boolean;
  /** A line played on top, its bar 1 on the chart's; default none. */
  readonly line?: Line;
}

const BACKING_OPTIONS: OptionNames<BackingOptions> = {
  groove: true,
  bass: true,
  comping: true,
  drums: true,
  seed: true,
  trade: true,
  countIn: true,
  ending: true,
  line: true,
};

const MOST_COUNT_IN = 8;

/**
 * A band that plays a chart in a groove: bass, chords and drums, counted in and ended, as parts of a
 * sheet to be written. All of them rest in a break. The lines are even: `writeMidi` of
 * `@reedplate/interchange` plays the chart's feel.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a wrong count-in, seed, level or program; `OPTION_UNKNOWN` for a
 * groove that is not in the catalogue, `GROOVE_INVALID` for one of which a pattern cannot be read, or of beats
 * that the metre does not have
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 * import { makeBacking } from '@reedplate/backing';
 *
 * const chart = makeChart('quick-change', 'G', { choruses: 2 });
 * const { parts, chart: played } = makeBacking(chart, { groove: 'boogie' });
 * parts?.map((part) => part.name); // => ['Bass', 'Comping', 'Drums']
 * played?.bars; // => 26
 * makeBacking(chart, { bass: { mute: true } }).parts?.length; // => 2
 * makeBacking(chart, { countIn: 9 }); // throws NUMBER_RANGE
 * makeBacking(chart, { groove: 'boggie' as 'boogie' }); // throws OPTION_UNKNOWN
 * ```
 */
export function makeBacking(chart: Chart, options: BackingOptions = {}): Sheet {
  const given = requireOptions(options, BACKING_OPTIONS, 'makeBacking');
  const { countIn = 1, ending = true, line } = given;
  requireChart(chart);
  requireInteger(countIn, { min: 0, max: MOST_COUNT_IN, what: 'bars counted in' });
  const groove = toGroove(given.groove, chart);
  const played = frameChart(chart, { countIn, ending, lead: line?.pickup ?? 0 });
  const { metre, pickup, tempo } = played;
  const head = { metre, pickup, ...(tempo === undefined ? {} : { tempo }) };
  const shift = itemAt(played.spans, countIn).start;
  const tune = line === undefined ? makeLine([], head) : moveLine(line, head, shift);
  return deepFreeze({
    line: tune,
    key: chart.key,
    chart: played,
    parts: [
      ...(line === undefined ? [] : [{ name: 'Tune', program: TUNE_PROGRAM, line: tune }]),
      ...playBand(played, groove, { ...given, countIn, ending }),
    ],
  });
}

type LineHead = Pick<Line, 'metre' | 'pickup' | 'tempo'>;

/** The harmonica in General MIDI, counted from 1. */
const TUNE_PROGRAM = 23;

interface Frame {
  readonly countIn: number;
  readonly ending: boolean;
  /** Ticks that the line begins before bar 1. */
  readonly lead: number;
}

/** The chart with bars of no chord before it and a bar of its tonic after it. */
function frameChart(chart: Chart, { countIn, ending, lead }: Frame): Chart {
  const { barTicks } = parseMetre(chart.metre);
  const pickup = countIn === 0 ? Math.max(chart.pickup, lead) : 0;
  const shift = countIn * barTicks + pickup - chart.pickup;
  const before = Array.from({ length: countIn }, (_, at) =>
    barSpan(at * barTicks, at + 1, barTicks),
  );
  const own = chart.spans.map((span) => ({
    ...span,
    start: span.start + shift,
    end: span.end + shift,
    bar: span.bar + countIn,
  }));
  const { end } = itemAt(own, -1);
  const bars = countIn + chart.bars + (ending ? 1 : 0);
  const after = ending ? [{ ...barSpan(end, bars, barTicks), ...tonicOf(chart) }] : [];
  return { ...chart, pickup, bars, spans: [...before, ...own, ...after] };
}

function barSpan(start: number, bar: number, barTicks: number): ChordSpan {
  const place = { start, end: start + barTicks, chorus: 1, bar, barOfForm: bar, beat: 1 };
  return { ...place, numeral: null, chord: null };
}

/** The first tonic chord of a chart, or its first chord. */
function tonicOf({ spans }: Chart): {
  readonly numeral: string | null;
  readonly chord: Chord | null;
} {
  const tonic = spans.find(({ numeral }) => /^[Ii](?![IiVv])/u.test(numeral ?? ''));
  const { numeral = null, chord = null } = tonic ?? spans.find((span) => span.chord !== null) ?? {};
  return { numeral, chord };
}

function moveLine(line: Line, head: LineHead, barOne: number): Line {
  const shift = barOne - line.pickup;
  const notes = line.notes.map((note) => ({ ...note, start: note.start + shift }));
  const { title } = line;
  return makeLine(notes, { ...head, ...(title === undefined ? {} : { title }) });
}
