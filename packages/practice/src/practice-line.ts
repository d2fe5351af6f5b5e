import { checkChart } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import {
  type Harp,
  type HarpLike,
  type KnownTunings,
  type PlayerLike,
  type Sounding,
  toHarp,
  toPlayer,
} from '@reedplate/layout';
import { type Line, makeLine } from '@reedplate/line';
import {
  type Chord,
  type ChordDegree,
  HIGHEST_MIDI,
  LOWEST_MIDI,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOneOf,
  requireOptions,
} from '@reedplate/pitch';
import { arpeggioFigures } from './arpeggio.js';
import { PRACTICE_CAUTIONS } from './cautions.js';
import { cheapestPath } from './connect.js';
import { type FigurePlace, type Passage, passagesByBeat, passagesBySpan } from './passage.js';
import { figureCost, moveCost } from './path-cost.js';
import {
  chordVoicings,
  type Figure,
  guideToneVoicings,
  rootVoicings,
  type Voicing,
  type VoicingLimits,
} from './voicing.js';

/**
 * What a practice line plays: the `roots`, each held for its chord; the `chords`, as whole as the
 * harp has them; the `guide-tones`, one third or seventh a chord; `arpeggios`, a tone a beat, up
 * through the chord from its root and, while it lasts, down and up again. Where the harp
 * has no such tone within the limits, another of the chord stands in: `degrees` says which.
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
  /** What to mind while playing: {@link PRACTICE_CAUTIONS}. */
  readonly cautions: readonly string[];
}

/** How {@link practiceLine} chooses. */
export interface PracticeOptions {
  /** Default `roots`. */
  readonly kind?: PracticeKind;
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /**
   * Lowest and highest MIDI number allowed, both inclusive. Without either, holes 2 to 6, where
   * most blues is played (common practice), for chords hole 1 as well, and beyond only for a chord that
   * has nothing there.
   */
  readonly lowest?: number;
  readonly highest?: number;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const PRACTICE_OPTIONS: OptionNames<PracticeOptions> = {
  kind: true,
  level: true,
  lowest: true,
  highest: true,
  known: true,
};

/**
 * The smoothest line of a kind through a chart on a harp, of what a player has: the way with the fewest semitones moved from chord to chord in all and of those the
 * easiest techniques, found exactly. Equal ways are decided by the lowest hole at the end of the
 * line, then at the chord before, and so on. An arpeggio is chosen whole, and moves from its last
 * tone to the first of the next.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` with `where.bar` for a chord of which the harp has no tone within
 *   the limits, `OPTION_UNKNOWN` for the kind or level, `NUMBER_RANGE` for a range that is none,
 *   `CHART_INVALID` for a chart without chords or out of order
 * @example
 * ```ts
 * import { practiceLine } from '@reedplate/practice';
 * import { makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('basic', 'G');
 * const { steps } = practiceLine(chart, 'C', { kind: 'roots' });
 * steps.map(({ soundings }) => soundings[0]?.hole); // => [2, 2, 2, 2, 4, 4, 2, 2, 4, 4, 2, 4]
 * practiceLine(chart, 'C', { lowest: 100 }); // throws SOUNDING_IMPOSSIBLE
 * ```
 */
export function practiceLine(
  chart: Chart,
  given: HarpLike,
  options: PracticeOptions = {},
): PracticeLine {
  const checked = requireOptions(options, PRACTICE_OPTIONS, 'practiceLine');
  const { kind = 'roots', level = 'bends', known, ...range } = checked;
  const harp = toHarp(given, known);
  requireOneOf(kind, PRACTICE_KINDS, { what: 'a kind of practice line' });
  toPlayer(level);
  checkChart(chart);
  const passages = kind === 'arpeggios' ? passagesByBeat(chart) : passagesBySpan(chart);
  const ranges = rangesToTry(range, harp, kind);
  const choicesOf = choosing((passage) =>
    ranges
      .map((within) => figuresOf(passage, kind, harp, { level, ...within }))
      .find((figures) => figures.length > 0),
  );
  const columns = passages.map((passage) => choicesOf(passage) ?? failNoVoicing(passage[0]));
  const path = cheapestPath(columns, figureCost, moveCost);
  const steps = passages.flatMap((passage, index) =>
    passage.map((place, at) => makeStep(place, path[index]?.[at] as Voicing)),
  );
  return Object.freeze({
    kind,
    steps: Object.freeze(steps),
    line: lineOf(steps, chart),
    cautions: PRACTICE_CAUTIONS,
  });
}

type Choosing = (passage: Passage) => readonly Figure[] | undefined;

/** Chords come back: the figures of one are worked out once for each length that it has. */
function choosing(choose: Choosing): Choosing {
  const known = new Map<string, ReturnType<Choosing>>();
  return (passage) => {
    const name = `${passage[0].span.chord.symbol} ${passage.length}`;
    if (!known.has(name)) known.set(name, choose(passage));
    return known.get(name);
  };
}

function figuresOf(
  passage: Passage,
  kind: PracticeKind,
  harp: Harp,
  limits: VoicingLimits,
): readonly Figure[] {
  const { chord } = passage[0].span;
  if (kind === 'arpeggios') return arpeggioFigures(chord, harp, limits, passage.length);
  const voicings = VOICINGS[kind](chord, harp, limits);
  return voicings.map((voicing) => [voicing]);
}

const VOICINGS = {
  roots: rootVoicings,
  chords: chordVoicings,
  'guide-tones': guideToneVoicings,
} as const;

type Range = Pick<VoicingLimits, 'lowest' | 'highest'>;

const WHOLE_HARP: Range = { lowest: LOWEST_MIDI, highest: HIGHEST_MIDI };

function rangesToTry(
  { lowest, highest }: Partial<Range>,
  { holes }: Harp,
  kind: PracticeKind,
): readonly Range[] {
  if (lowest !== undefined || highest !== undefined) return [rangeFrom(lowest, highest)];
  const home = holes.slice(kind === 'chords' ? 0 : 1, 6).flatMap(({ blow, draw }) => [blow, draw]);
  return [{ lowest: Math.min(...home), highest: Math.max(...home) }, WHOLE_HARP];
}

function rangeFrom(lowest = LOWEST_MIDI, highest = HIGHEST_MIDI): Range {
  const bounds = { min: LOWEST_MIDI, max: HIGHEST_MIDI };
  requireInteger(lowest, { ...bounds, what: 'the lowest MIDI number' });
  requireInteger(highest, { ...bounds, min: lowest, what: 'the highest MIDI number' });
  return { lowest, highest };
}

function failNoVoicing({ span }: FigurePlace): never {
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: span.chord.symbol,
    expected: 'a chord of which this harp has a tone at this level and in this range',
    where: { bar: span.bar, beat: span.beat },
  });
}

function makeStep(
  { span, start, end, beat }: FigurePlace,
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
