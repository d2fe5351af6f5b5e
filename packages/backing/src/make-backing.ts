import { type Chart, requireChart } from '@reedplate/form';
import type { Sheet } from '@reedplate/interchange';
import { type Line, makeLine, parseMetre, tickAt } from '@reedplate/line';
import {
  type Chord,
  deepFreeze,
  itemAt,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOptions,
} from '@reedplate/pitch';
import { changeKey, type KeyChange } from './change-key.js';
import type { Groove } from './groove.js';
import type { GrooveId } from './grooves.js';
import { ladderOf } from './ladder.js';
import { playBand } from './play-band.js';
import { USUAL_TEMPO } from './require-backing.js';
import { swingRatio } from './swing.js';
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
  /**
   * The long to the short eighth where the feel is swung: a number, 1 to 4, or `by-tempo` as jazz bands were
   * measured ({@link SWING_BY_ROLE}). Default 2, the shuffle.
   */
  readonly swing?: number | 'by-tempo';
  /** Milliseconds, 0 to 30, that notes come late by chance, drawn from the seed. Default 0. */
  readonly looseness?: number;
  /** Another key after some choruses. Default none. */
  readonly keyChange?: KeyChange;
  /** Felt beats a minute that each chorus is faster than the one before, slower below 0. Default 0. */
  readonly ladder?: number;
  /** Whether chords and bass rest in every other four bars, for trading fours. Default `false`. */
  readonly trade?: boolean;
  /**
   * Bars counted in, 0 to 8; default 1. Every line says so (`countIn`), and bar 1 of the chart comes after them. A
   * pickup of the line falls into the last of them.
   */
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
  swing: true,
  looseness: true,
  keyChange: true,
  ladder: true,
  trade: true,
  countIn: true,
  ending: true,
  line: true,
};

const MOST_COUNT_IN = 8;

/**
 * A band that plays a chart in a groove: bass, chords and drums, counted in and ended, as parts of a
 * sheet to be written. All of them rest in a break. The lines are even: `writeMidi` of
 * `@reedplate/interchange` plays the chart's feel, by the `swing` of each part.
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
 * played?.bars; // => 25
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
  const framed = frameChart(chart, { countIn, ending, lead: line?.pickup ?? 0 });
  const played = given.keyChange === undefined ? framed : changeKey(framed, given.keyChange);
  const head = headOf(played, countIn, given.ladder ?? 0);
  const tune = line === undefined ? makeLine([], head) : moveLine(line, head);
  const swing = swingOf(given.swing, played);
  return deepFreeze({
    line: tune,
    key: chart.key,
    chart: played,
    parts: [
      ...(line === undefined
        ? []
        : [{ name: 'Tune', program: TUNE_PROGRAM, ...swing.soloist, line: tune }]),
      ...playBand(played, groove, head, { ...given, countIn, ending }).map((part) => ({
        ...part,
        ...swing.band,
      })),
    ],
  });
}

/** What every line of a backing begins with. */
export type LineHead = Omit<Line, 'notes' | 'title'>;

/** The harmonica in General MIDI, counted from 1. */
const TUNE_PROGRAM = 23;

interface Frame {
  readonly countIn: number;
  readonly ending: boolean;
  /** Ticks that the line begins before bar 1. */
  readonly lead: number;
}

/** The chart without a pickup where bars are counted in, and with a bar of its tonic after it. */
function frameChart(chart: Chart, { countIn, ending, lead }: Frame): Chart {
  const { barTicks } = parseMetre(chart.metre);
  const pickup = countIn === 0 ? Math.max(chart.pickup, lead) : 0;
  const shift = pickup - chart.pickup;
  const own = chart.spans.map((span) => ({
    ...span,
    start: span.start + shift,
    end: span.end + shift,
  }));
  const { end, chorus } = itemAt(own, -1);
  const bars = chart.bars + (ending ? 1 : 0);
  const place = { start: end, end: end + barTicks, chorus, bar: bars, barOfForm: bars, beat: 1 };
  const after = ending ? [{ ...place, ...tonicOf(chart) }] : [];
  return { ...chart, pickup, bars, spans: [...own, ...after] };
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

function headOf(chart: Chart, countIn: number, ladder: number): LineHead {
  const { metre, pickup, tempo } = chart;
  const tempoChanges = ladderOf(chart, countIn, ladder);
  return {
    metre,
    pickup,
    ...(countIn === 0 ? {} : { countIn }),
    ...(tempo === undefined ? {} : { tempo }),
    ...(tempoChanges.length === 0 ? {} : { tempoChanges }),
  };
}

function moveLine(line: Line, head: LineHead): Line {
  const shift = barOneOf(head) - barOneOf(line);
  const notes = line.notes.map((note) => ({ ...note, start: note.start + shift }));
  const { title } = line;
  return makeLine(notes, { ...head, ...(title === undefined ? {} : { title }) });
}

const barOneOf = (head: LineHead): number => tickAt({ bar: 1, beat: 1 }, head);

/** How each part is swung, where not as a shuffle. */
function swingOf(swing: BackingOptions['swing'], { tempo = USUAL_TEMPO }: Chart) {
  if (swing === undefined) return { band: {}, soloist: {} };
  if (swing === 'by-tempo') {
    const [band, soloist] = [swingRatio('band', tempo), swingRatio('soloist', tempo)];
    return { band: { swing: band }, soloist: { swing: soloist } };
  }
  if (typeof swing === 'number' && swing >= 1 && swing <= MOST_SWING)
    return { band: { swing }, soloist: { swing } };
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: swing,
    expected: `a long to a short eighth, 1 to ${MOST_SWING}, or by-tempo`,
  });
}

const MOST_SWING = 4;
