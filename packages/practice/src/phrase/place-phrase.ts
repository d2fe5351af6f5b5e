import { checkChart } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import {
  type Harp,
  type HarpLike,
  harpRange,
  type KnownTunings,
  type PlayerLike,
  toHarp,
} from '@reedplate/layout';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import { itemAt, type OptionNames, requireOptions } from '@reedplate/pitch';
import type { LinePath } from '@reedplate/playability';
import { type TimedTab, tabOfLine } from '@reedplate/tab';
import { knownParts } from '../known.js';
import { barredTab } from './barred-tab.js';
import { easiestPath } from './easiest-path.js';
import { tonicOf } from './harmony.js';
import { homeTonic } from './home-tonic.js';
import { type LaidPhrase, layPhrase } from './lay-phrase.js';
import { timedNote } from './line-of-phrase.js';
import { nearestVariant, reachOf, type Variant } from './nearest-variant.js';
import type { Phrase, PhraseNote } from './phrase.js';
import type { PhraseNotPlaced, PlacedPhrase } from './placed-phrase.js';
import { type KnownPhrases, type PhraseLike, toPhrase } from './to-phrase.js';

/** Where {@link placePhrase} puts a phrase, and for whom. */
export interface PlaceOptions {
  readonly chart: Chart;
  readonly harp: HarpLike;
  /** Bar of the chart for bar 1 of the phrase, from 1; default 1. */
  readonly bar?: number;
  /** What the player can do, a level or a player; default `bends`. */
  readonly level?: PlayerLike;
  /** Phrases of one's own, and tunings for a harp that is named in one. */
  readonly known?: KnownTunings & KnownPhrases;
}

const OPTIONS: OptionNames<PlaceOptions> = {
  chart: true,
  harp: true,
  bar: true,
  level: true,
  known: true,
};

/**
 * Puts a phrase on a harp, over bars of a chart: in the octave and with the soundings that cost the
 * least effort, exactly. Where a note is not to be had at the level, it gives the nearest variant that
 * keeps the rhythm and the chord tones, and says in `changes` what is played otherwise: as few notes as
 * can be, moved as little as can be, and of those the easiest. Whoever transposes song and harp gets the
 * same, transposed.
 *
 * @throws ReedplateError `PHRASE_UNKNOWN`, `PHRASE_INVALID` for a chart with other beats, `NUMBER_RANGE` for
 *   a bar without room after it, `CHART_INVALID`, `HARP_INVALID`, `OPTION_UNKNOWN`
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 * import { placePhrase } from '@reedplate/practice';
 *
 * const chart = makeChart('quick-change', 'A');
 * const placed = placePhrase('low-seat', { chart, bar: 3, harp: 'D' });
 * placed.playable && placed.changes; // => []
 * placePhrase('low-seat', { chart, bar: 13, harp: 'D' }); // throws NUMBER_RANGE
 * ```
 */
export function placePhrase(
  given: PhraseLike,
  options: PlaceOptions,
): PlacedPhrase | PhraseNotPlaced {
  return placeWithin(given, requireOptions(options, OPTIONS, 'placePhrase'), MOST_HOLES);
}

const MOST_HOLES = 16;

/** As {@link placePhrase}, with the holes from 1 to the last one given. */
export function placeWithin(
  given: PhraseLike,
  asked: PlaceOptions,
  lastHole: number,
): PlacedPhrase | PhraseNotPlaced {
  const { chart, bar = 1, level = 'bends' } = asked;
  const known = knownParts(asked.known);
  const phrase = toPhrase(given, known.phrases);
  const harp = toHarp(asked.harp, known.tunings);
  checkChart(chart);
  const laid = layPhrase(phrase, chart, bar);
  const best = easiestOctave(phrase, laid, chart, harp, { level, lastHole });
  return best === undefined
    ? notPlaced(phrase, laid, harp, { bar, level })
    : placed(phrase, laid, best, { bar, chart });
}

interface Octave {
  readonly octave: number;
  readonly variant: Variant;
  readonly line: Line;
  readonly path: LinePath;
}

/** The octave with the fewest notes changed, then the least moved, then the least effort, then the lowest. */
function easiestOctave(
  phrase: Phrase,
  laid: LaidPhrase,
  chart: Chart,
  harp: Harp,
  { level, lastHole }: { readonly level: PlayerLike; readonly lastHole: number },
): Octave | undefined {
  const reach = reachOf(harp, level, lastHole);
  const home = homeTonic(harp, tonicOf(chart));
  const variants = octavesWithin(laid, home, harp).flatMap((octave) => {
    const variant = nearestVariant(laid.notes, home + 12 * octave, reach);
    return variant === undefined ? [] : [{ octave, variant }];
  });
  const cost = ({ variant: { changes, moved } }: (typeof variants)[number]): number =>
    changes.length * 10_000 + moved;
  const least = Math.min(...variants.map(cost));
  return variants
    .filter((each) => cost(each) === least)
    .flatMap(({ octave, variant }): Octave[] => {
      const line = lineOf(phrase, laid, variant, chart);
      const path = easiestPath(line, harp, level, tonicOf(chart));
      return path === undefined ? [] : [{ octave, variant, line, path }];
    })
    .reduce<Octave | undefined>(
      (best, each) => (best === undefined || each.path.effort < best.path.effort ? each : best),
      undefined,
    );
}

/** Octaves in which at least one note of the phrase lies on the harp. */
function octavesWithin({ notes }: LaidPhrase, home: number, harp: Harp): readonly number[] {
  const { lowest, highest } = harpRange(harp);
  const heights = notes.map(({ above }) => above);
  const first = Math.ceil((lowest - home - Math.max(...heights)) / 12);
  const last = Math.floor((highest - home - Math.min(...heights)) / 12);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => first + index);
}

function lineOf(phrase: Phrase, laid: LaidPhrase, { pitches }: Variant, chart: Chart): Line {
  const notes = laid.notes.flatMap(({ note, start, duration }, index) => {
    const pitch = pitches[index] ?? null;
    if (pitch === null) return [];
    const said = phrase.notes[note] as PhraseNote;
    return [timedNote(said, { start, duration, pitch, metre: chart.metre })];
  });
  const { metre, tempo } = chart;
  return makeLine(notes, { metre, pickup: laid.pickup, ...(tempo === undefined ? {} : { tempo }) });
}

function placed(
  { id, notes }: Phrase,
  { pickup, otherHarmony }: LaidPhrase,
  { octave, variant, line, path }: Octave,
  { bar, chart }: { readonly bar: number; readonly chart: Chart },
): PlacedPhrase {
  const { barTicks, beatTicks, beatsPerBar } = parseMetre(chart.metre);
  const first = itemAt(line.notes, 0).start;
  const from = Math.min(first, pickup + (bar - 1) * barTicks) / beatTicks;
  const timed = tabOfLine(line, path.harp, { soundings: path.soundings });
  const begins = itemAt(timed, 0);
  const rests = begins.marks.length === 0;
  const lead: readonly TimedTab[] =
    rests && begins.beats > from ? [{ marks: [], beats: begins.beats - from }] : [];
  return Object.freeze({
    playable: true,
    phrase: id,
    harp: path.harp,
    bar,
    octave,
    line,
    soundings: path.soundings,
    tab: barredTab(
      [...lead, ...timed.slice(rests ? 1 : 0)],
      chart.metre,
      pickup / beatTicks + (bar - 1) * beatsPerBar - from,
    ),
    effort: path.effort,
    changes: Object.freeze(
      variant.changes.map((change) =>
        Object.freeze({ ...change, degree: (notes[change.note] as PhraseNote).degree }),
      ),
    ),
    otherHarmony: Object.freeze(otherHarmony.map((each) => Object.freeze(each))),
  });
}

/** Which chords have no tone on the harp at the level. */
function notPlaced(
  { id }: Phrase,
  { notes }: LaidPhrase,
  harp: Harp,
  { bar, level }: { readonly bar: number; readonly level: PlayerLike },
): PhraseNotPlaced {
  const { pitches } = reachOf(harp, level);
  const classes = new Set<number>(pitches.map((pitch) => pitch % 12));
  const without = notes.flatMap(({ chord }) =>
    chord !== null && !chord.tones.some(({ pitchClass }) => classes.has(pitchClass))
      ? [chord.symbol]
      : [],
  );
  return Object.freeze({
    playable: false,
    phrase: id,
    harp,
    bar,
    without: Object.freeze([...new Set(without)]),
  });
}
