import { type FormLike, type KnownForms, makeChart, toForm, toMinor } from '@reedplate/form';
import {
  type HarpLike,
  harpName,
  type KnownTunings,
  type PlayerLike,
  toHarp,
  toPlayer,
} from '@reedplate/layout';
import {
  deepFreeze,
  itemAt,
  type KeyLike,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOneOf,
  requireOptions,
  requireSome,
  toKey,
} from '@reedplate/pitch';
import { pickHarps, positionByNumber, positionOf } from '@reedplate/position';
import { describeKeyChords } from '../key-chords/describe-key-chords.js';
import { keyChords } from '../key-chords/key-chords.js';
import { knownParts } from '../known.js';
import { type KnownPhrases, ownPhrases } from '../phrase/to-phrase.js';
import { LESSON_GOALS, type Lesson, type LessonGoal } from './lesson.js';
import { stepsFor } from './lesson-steps.js';

/** What {@link makeLesson} is told. */
export interface LessonOptions {
  readonly form: FormLike;
  /** Key of the song; a minor key with a form in major takes the form in minor. */
  readonly key: KeyLike;
  /** The harp; without it the best of those owned. */
  readonly harp?: HarpLike;
  /** Harps to pick from; default one of each of the twelve keys. */
  readonly own?: readonly HarpLike[];
  /** What the student can do, a level or a player; default `bends`. */
  readonly level?: PlayerLike;
  /** Whole minutes, 6 to 180; default 20. */
  readonly minutes?: number;
  /** What to work on; default all. */
  readonly goals?: readonly LessonGoal[];
  /** Forms and tunings of one's own, by their ids; of phrases of one's own the lesson takes one rather than ours. */
  readonly known?: KnownForms & KnownTunings & KnownPhrases;
}

const OPTIONS: OptionNames<LessonOptions> = {
  form: true,
  key: true,
  harp: true,
  own: true,
  level: true,
  minutes: true,
  goals: true,
  known: true,
};

/**
 * A lesson over a form in a key: the chords of the key, then steps in order, from hearing the changes to
 * choruses of one's own, each with a line that the student can play, its tab, tempos, bars to loop, and how it
 * is judged. A goal for which there is nothing on the harp, at the level or in the metre, is left out.
 *
 * @throws ReedplateError `FORM_UNKNOWN`, `KEY_UNKNOWN`, `HARP_INVALID`, `NUMBER_RANGE`, `OPTION_UNKNOWN`,
 *   `LIST_EMPTY` for no goals, `SOUNDING_IMPOSSIBLE` where there is nothing for any goal
 * @example
 * ```ts
 * import { makeLesson } from '@reedplate/practice';
 *
 * const { harp, steps } = makeLesson({ form: 'quick-change', key: 'A', level: 'natural' });
 * harp.key; // => 'D'
 * steps.map(({ goal }) => goal); // => ['changes', 'chords', 'guide-tones', 'riff', 'turnaround', 'choruses']
 * makeLesson({ form: 'basic', key: 'G', minutes: 2 }); // throws NUMBER_RANGE
 * ```
 */
export function makeLesson(options: LessonOptions): Lesson {
  const asked = requireOptions(options, OPTIONS, 'makeLesson');
  const { level = 'bends', minutes = 20, goals = LESSON_GOALS, own } = asked;
  const known = knownParts(asked.known);
  toPlayer(level);
  requireInteger(minutes, { min: LESSON_GOALS.length, max: 180, what: 'the minutes of a lesson' });
  const wanted = inOrder(requireSome(goals, 'one goal'));
  const key = toKey(asked.key);
  const form = toForm(asked.form, known.forms);
  const chart = makeChart(
    key.mode === 'minor' && form.mode === 'major' ? toMinor(form) : form,
    key,
  );
  const choice = { chart, level, known: known.tunings, ...(own === undefined ? {} : { own }) };
  const harp =
    asked.harp === undefined
      ? itemAt(pickHarps(chart.key, choice), 0).harp
      : toHarp(asked.harp, known.tunings);
  const phrases = ownPhrases(known.phrases);
  const steps = stepsFor(wanted, minutes, { chart, harp, level, phrases });
  if (steps.length === 0) {
    throw new ReedplateError({
      code: 'SOUNDING_IMPOSSIBLE',
      value: wanted.join(', '),
      expected: `goals for which there is something in ${chart.metre} on a harp in ${harpName(harp)} at this level`,
    });
  }
  const chords = keyChords(chart.key, harp);
  const position = positionOf(harp, chart.key);
  return deepFreeze({
    title: `${form.name} in ${chart.key}, harp in ${harpName(harp)}, ${positionByNumber(position).ordinal} position`,
    chart,
    harp,
    position,
    minutes,
    chords,
    words: describeKeyChords(chords),
    steps,
  });
}

/** Goals in the order in which they are taught, each once. */
function inOrder(goals: readonly LessonGoal[]): readonly LessonGoal[] {
  for (const goal of goals) requireOneOf(goal, LESSON_GOALS, { what: 'a goal of a lesson' });
  return LESSON_GOALS.filter((goal) => goals.includes(goal));
}
