import type { Chart, ChordSpan } from '@reedplate/form';
import type { Harp, Sounding, TechniqueLevel } from '@reedplate/layout';
import { type Line, makeLine, readMetre } from '@reedplate/line';
import {
  type Chord,
  type ChordDegree,
  HIGHEST_MIDI,
  LOWEST_MIDI,
  ReedplateError,
  requireOneOf,
} from '@reedplate/pitch';
import { cheapestPath } from './connect.js';
import { moveCost, voicingCost } from './path-cost.js';
import {
  chordVoicings,
  degreeVoicings,
  guideToneVoicings,
  rootVoicings,
  targetsWithin,
  type Voicing,
  type VoicingLimits,
} from './voicing.js';

/**
 * What a practice line plays: the `roots`, each held for its chord; the `chords`, as whole as the
 * harp has them; the `guide-tones`, one third or seventh a chord; `arpeggios`, a tone a beat.
 */
export const PRACTICE_KINDS = Object.freeze([
  'roots',
  'chords',
  'guide-tones',
  'arpeggios',
] as const);

/** What a practice line plays; see {@link PRACTICE_KINDS}. */
export type PracticeKind = (typeof PRACTICE_KINDS)[number];

/** One move of a practice line. */
export interface PracticeStep {
  /** Bar of the chart, from 1. */
  readonly bar: number;
  /** Felt beat it begins on, from 1. */
  readonly beat: number;
  /** First tick. */
  readonly start: number;
  /** Ticks held. */
  readonly duration: number;
  readonly chord: Chord;
  readonly numeral: string | null;
  /** From the low end. */
  readonly soundings: readonly Sounding[];
  /** Degree of each sounding. */
  readonly degrees: readonly ChordDegree[];
}

/** A line to practise: what to play at each chord, and the same as timed notes. */
export interface PracticeLine {
  readonly kind: PracticeKind;
  readonly steps: readonly PracticeStep[];
  readonly line: Line;
}

/** How {@link practiceLine} chooses. */
export interface PracticeOptions {
  /** Default `roots`. */
  readonly kind?: PracticeKind;
  /** Default `natural`: a line that needs no bend. */
  readonly level?: TechniqueLevel;
  /**
   * Lowest and highest MIDI number allowed, both inclusive. Without either, holes 2 to 6, where
   * most blues is played (common practice), and beyond only for a chord that has nothing there.
   */
  readonly lowest?: number;
  readonly highest?: number;
}

/**
 * The smoothest line of a kind through a chart on a harp: the way with the fewest semitones moved
 * in all and of those the easiest techniques, found exactly. Equal ways are decided by the lowest
 * hole at the end of the line, then at the chord before, and so on.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` with `where.bar` for a chord of which the harp has no tone within
 *   the limits, `OPTION_UNKNOWN` for the kind or level, `CHART_INVALID` for a chart without chords
 * @example
 * ```ts
 * import { practiceLine } from '@reedplate/chord-tone';
 * import { formById, makeChart } from '@reedplate/form';
 * import { makeHarp } from '@reedplate/layout';
 *
 * const chart = makeChart(formById('basic'), { key: 'G' });
 * const { steps } = practiceLine(chart, makeHarp('C'), { kind: 'roots' });
 * steps.map(({ soundings }) => soundings[0]?.hole); // => [2, 2, 2, 2, 4, 4, 2, 2, 4, 4, 2, 4]
 * practiceLine(chart, makeHarp('C'), { lowest: 100 }); // throws SOUNDING_IMPOSSIBLE
 * ```
 */
export function practiceLine(
  chart: Chart,
  harp: Harp,
  { kind = 'roots', level = 'natural', ...range }: PracticeOptions = {},
): PracticeLine {
  requireOneOf(kind, PRACTICE_KINDS, { what: 'a kind of practice line' });
  const moments = chart.spans.flatMap((span) =>
    span.chord === null ? [] : momentsOf({ ...span, chord: span.chord }, chart, kind),
  );
  if (moments.length === 0) throw noChords(chart);
  const ranges = rangesToTry(range, harp);
  const columns = moments.map(
    (moment) =>
      ranges
        .map((within) => voicingsAt(moment, harp, { level, ...within }))
        .find((voicings) => voicings.length > 0) ?? failNoVoicing(moment),
  );
  const path = cheapestPath(columns, voicingCost, moveCost);
  const steps = moments.map((moment, index) => makeStep(moment, path[index] as Voicing));
  return Object.freeze({ kind, steps: Object.freeze(steps), line: lineOf(steps, chart) });
}

type VoicedSpan = ChordSpan & { readonly chord: Chord };

/** A time at which a line must sound something of a chord. */
interface Moment {
  readonly span: VoicedSpan;
  readonly start: number;
  readonly end: number;
  readonly beat: number;
  readonly kind: PracticeKind;
  /** Which tone of the chord an arpeggio has come to, from 0. */
  readonly count: number;
}

function momentsOf(span: VoicedSpan, { metre }: Chart, kind: PracticeKind): readonly Moment[] {
  const { start, end, beat } = span;
  if (kind !== 'arpeggios') return [{ span, start, end, beat, kind, count: 0 }];
  const { beatTicks } = readMetre(metre);
  return Array.from({ length: Math.ceil((end - start) / beatTicks) }, (_, count) => {
    const from = start + count * beatTicks;
    const to = Math.min(end, from + beatTicks);
    return { span, start: from, end: to, beat: beat + count, kind, count };
  });
}

function voicingsAt(moment: Moment, harp: Harp, limits: VoicingLimits): readonly Voicing[] {
  const { chord } = moment.span;
  if (moment.kind === 'roots') return rootVoicings(chord, harp, limits);
  if (moment.kind === 'chords') return chordVoicings(chord, harp, limits);
  if (moment.kind === 'guide-tones') return guideToneVoicings(chord, harp, limits);
  const targets = targetsWithin(chord, harp, limits);
  const had = chord.tones.filter(({ degree }) =>
    targets.some((target) => target.degree === degree),
  );
  const tone = had[moment.count % had.length];
  return tone === undefined ? [] : degreeVoicings(targets, tone.degree);
}

type Range = Pick<VoicingLimits, 'lowest' | 'highest'>;

const WHOLE_HARP: Range = { lowest: LOWEST_MIDI, highest: HIGHEST_MIDI };

function rangesToTry(asked: Partial<Range>, { holes }: Harp): readonly Range[] {
  if (asked.lowest !== undefined || asked.highest !== undefined)
    return [{ ...WHOLE_HARP, ...asked }];
  const home = holes.slice(1, 6).flatMap(({ blow, draw }) => [blow, draw]);
  return [{ lowest: Math.min(...home), highest: Math.max(...home) }, WHOLE_HARP];
}

function failNoVoicing({ span }: Moment): never {
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: span.chord.symbol,
    expected: 'a chord of which this harp has a tone at this level and in this range',
    where: { bar: span.bar, beat: span.beat },
  });
}

function noChords({ form }: Chart): ReedplateError {
  return new ReedplateError({
    code: 'CHART_INVALID',
    value: form,
    expected: 'a chart with at least one chord',
    where: { path: 'spans' },
  });
}

function makeStep(
  { span, start, end, beat }: Moment,
  { soundings, degrees }: Voicing,
): PracticeStep {
  return Object.freeze({
    bar: span.bar,
    beat,
    start,
    duration: end - start,
    chord: span.chord,
    numeral: span.numeral,
    soundings: Object.freeze([...soundings]),
    degrees: Object.freeze([...degrees]),
  });
}

function lineOf(steps: readonly PracticeStep[], { metre, pickup, tempo }: Chart): Line {
  const notes = steps.flatMap(({ start, duration, soundings }) =>
    soundings.map(({ pitch }) => ({ start, duration, pitch })),
  );
  return makeLine(notes, { metre, pickup, ...(tempo === undefined ? {} : { tempo }) });
}
