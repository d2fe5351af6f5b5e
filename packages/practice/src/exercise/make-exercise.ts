import { checkChart } from '@reedplate/chord-tone';
import { type Chart, formatForm, formOfChart } from '@reedplate/form';
import {
  type HarpLike,
  type KnownTunings,
  type PlayerLike,
  type Sounding,
  toHarp,
} from '@reedplate/layout';
import { type Line, parseMetre } from '@reedplate/line';
import {
  deepFreeze,
  itemAt,
  type OptionNames,
  requireOneOf,
  requireOptions,
  SCALE_DEGREES,
  toPitchClass,
} from '@reedplate/pitch';
import { PRACTICE_CAUTIONS } from '../cautions.js';
import { distinctNotes } from '../phrase/distinct-notes.js';
import { plainHarmony } from '../phrase/harmony.js';
import { makePhrase } from '../phrase/make-phrase.js';
import { reachOf } from '../phrase/nearest-variant.js';
import type { Phrase, PhraseNote } from '../phrase/phrase.js';
import { placePhrase, placeWithin } from '../phrase/place-phrase.js';
import type { PhraseChange, PhraseNotPlaced } from '../phrase/placed-phrase.js';
import { bendDrill } from './bend-drill.js';
import { chordRhythm } from './chord-rhythm.js';
import { semitonesOfStep } from './chord-step.js';
import { EXERCISE_ROWS, type ExerciseKind, type ExerciseRow } from './exercise-table.js';
import { inNearOctaves } from './near-octaves.js';

/** The kinds of {@link makeExercise}, in the order in which they are taught. */
export const EXERCISE_KINDS: readonly ExerciseKind[] = /* @__PURE__ */ (() =>
  Object.freeze([...EXERCISE_ROWS.map(({ kind }) => kind), 'bend-drill' as const]))();

/** An exercise on a harp, over a chart. */
export interface Exercise {
  readonly playable: true;
  readonly kind: ExerciseKind;
  /** What to reach, in words. */
  readonly goal: string;
  readonly line: Line;
  /** What sounds each moment of the line. */
  readonly soundings: readonly (readonly Sounding[])[];
  readonly tab: string;
  /** Where the harp plays another tone than the exercise asks for. */
  readonly changes: readonly PhraseChange[];
  /** For exercises of breath, {@link PRACTICE_CAUTIONS}; else empty. */
  readonly cautions: readonly string[];
}

/** How {@link makeExercise} chooses. */
export interface ExerciseOptions {
  readonly kind: ExerciseKind;
  /** What the player can do; default `bends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

/** Exercises stay on holes 1 to 7, where beginners are at home. Common practice, no source. */
const LAST_HOLE = 7;

const OPTIONS: OptionNames<ExerciseOptions> = { kind: true, level: true, known: true };

/**
 * An exercise over a chart, on holes 1 to 7 where they have its chords: each with a rhythm, rests to
 * breathe, and a goal that a teacher can hear. `bend-drill` takes its pitches from the harp: the unbent
 * note, the bend held for two beats, and the release, for each bend of the player's on holes 1 to 6.
 *
 * @throws ReedplateError `OPTION_UNKNOWN`, `CHART_INVALID`, `HARP_INVALID`, `SOUNDING_IMPOSSIBLE` for a drill of
 *   bends that the player has not
 * @example
 * ```ts
 * import { makeChart } from '@reedplate/form';
 * import { makeExercise } from '@reedplate/practice';
 *
 * const chart = makeChart('basic', 'G');
 * const exercise = makeExercise(chart, 'C', { kind: 'roots-in-time' });
 * exercise.playable && exercise.line.notes.length; // => 24
 * exercise.goal; // => 'Land on the root of each chord on beat 1, and stop on beat 4 to breathe.'
 * makeExercise(chart, 'C', { kind: 'roofs' as 'thirds' }); // throws OPTION_UNKNOWN
 * ```
 */
export function makeExercise(
  chart: Chart,
  given: HarpLike,
  options: ExerciseOptions,
): Exercise | (PhraseNotPlaced & { readonly goal: string }) {
  const { kind, level = 'bends', known } = requireOptions(options, OPTIONS, 'makeExercise');
  requireOneOf(kind, EXERCISE_KINDS, { what: 'a kind of exercise' });
  checkChart(chart);
  const harp = toHarp(given, known);
  const row: ExerciseRow | undefined = EXERCISE_ROWS.find((each) => each.kind === kind);
  // The drill alone has no row: its notes come from the harp.
  if (row === undefined) return bendDrill(chart, harp, level);
  const chords = kind === 'chord-rhythm' ? chordRhythm(chart, harp, level, row.goal) : undefined;
  if (chords !== undefined) return chords;
  const phrase = phraseOf(row, chart, (notes) =>
    row.near ? inNearOctaves(notes, chart, harp, reachOf(harp, level, LAST_HOLE)) : notes,
  );
  const within = placeWithin(phrase, { chart, harp, level }, LAST_HOLE);
  // A chord that has nothing there is looked for on the whole harp.
  const placed = within.playable ? within : placePhrase(phrase, { chart, harp, level });
  if (!placed.playable) return { ...placed, goal: row.goal };
  const { line, soundings, tab, changes } = placed;
  const cautions = row.breath ? PRACTICE_CAUTIONS : Object.freeze([]);
  return Object.freeze({
    playable: true,
    kind,
    goal: row.goal,
    line,
    soundings: deepFreeze(soundings.map((each) => [...each])),
    tab,
    changes,
    cautions,
  });
}

/** The pattern over each bar, as degrees above the roots of its chords. */
function phraseOf(
  { kind, goal, bars }: ExerciseRow,
  chart: Chart,
  inOctaves: (notes: readonly PhraseNote[]) => readonly PhraseNote[],
): Phrase {
  const { beatTicks } = parseMetre(chart.metre);
  const form = formOfChart(chart);
  const from = chart.pickup;
  const length = form.bars.length * parseMetre(chart.metre).barTicks;
  const spans = chart.spans.filter(({ start }) => start < from + length);
  const notes = spans.flatMap(({ start, end, chord, bar }): readonly PhraseNote[] => {
    if (chord === null) return [];
    const pattern = itemAt(bars, (bar - 1) % bars.length);
    const played = pattern.flatMap(([beat, held, step, shift = 0]): PhraseNote[] => {
      const at = start + Math.round(beat * beatTicks);
      const until = Math.min(at + Math.round(held * beatTicks), end);
      if (until <= at) return [];
      const above = semitonesOfStep(chord, step) + shift;
      const degree = SCALE_DEGREES[toPitchClass(above)] as PhraseNote['degree'];
      return [{ at: at - from, length: until - at, degree, octave: Math.floor(above / 12) }];
    });
    // For the third of a chord without one stands the root, which may sound already.
    return distinctNotes(played);
  });
  return makePhrase(inOctaves(notes), {
    id: kind,
    from: 'chord',
    harmony: plainHarmony(formatForm(form)),
    metre: chart.metre,
    feel: chart.feel,
    trains: goal,
    source: 'made for this catalogue',
  });
}
