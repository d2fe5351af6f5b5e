import { checkChart } from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import { type HarpLike, type Sounding, soundings, toHarp } from '@reedplate/layout';
import { barBeatAt, type Line, makeLine, parseMetre } from '@reedplate/line';
import {
  type Chord,
  type ChordDegree,
  itemAt,
  type OptionNames,
  parseKey,
  ReedplateError,
  randomFrom,
  requireOptions,
  toPitchClass,
} from '@reedplate/pitch';
import {
  DEFAULT_LINE_TEMPO,
  doSteps,
  doStepsInTurn,
  moveEffort,
  type Steps,
  type StopSignal,
  toEffortModel,
} from '@reedplate/playability';
import { withOneHome } from '../phrase/easiest-path.js';
import {
  COMPOSE_OPTIONS,
  type ComposeOptions,
  mustHoldOf,
  readComposeOptions,
} from './compose-options.js';
import { type DrawnPhrase, drawPhrase, type PhraseGround } from './draw-phrase.js';
import { DEFAULT_MELODY_MODEL, MINOR_MELODY_MODEL } from './melody-model.js';
import {
  barsPerChorus,
  chordIn,
  type PhrasePlace,
  phrasesOf,
  requirePlan,
  usualPlan,
} from './phrases-of.js';
import { drawRhythm } from './rhythm.js';
import { CELLS_OF_THREE, CELLS_OF_TWO } from './rhythm-cells.js';

/** A note of a composed line. */
export interface ComposedStep {
  /** Letter of the phrase in the plan. */
  readonly phrase: string;
  /** Bar of the chart, from 1. */
  readonly bar: number;
  /** Felt beat, from 1. */
  readonly beat: number;
  readonly start: number;
  readonly duration: number;
  /** The chord it begins over; null over none. */
  readonly chord: Chord | null;
  /** Its degree of that chord; null for another note. */
  readonly degree: ChordDegree | null;
  readonly sounding: Sounding;
}

/** A line drawn over a chart, note by note, and the same as timed notes. */
export interface ComposedLine {
  readonly seed: number;
  readonly steps: readonly ComposedStep[];
  readonly line: Line;
}

const DEFAULT_DENSITY = Object.freeze({ fewest: 2, most: 6 });
const SECONDS_PER_MINUTE = 60;

/**
 * Draws a line over a chart that a harp can play. Rhythms come first, beat by beat; then the soundings of each
 * phrase, as a Markov model under constraints: what must hold (`changes`, `resolve`, `leap`, `ending`,
 * `effort`, the range, the level, the plan) always holds, and of all lines that keep it each is drawn with
 * exactly the chance that the model gives it. Phrases are drawn apart, a breath between them. The same seed
 * gives the same line on every runtime.
 *
 * @throws ReedplateError `COMPOSE_IMPOSSIBLE` where no line satisfies what must hold, with the names of what
 * conflicts; `COMPOSE_INVALID` for a plan, cells or model that are none, `OPTION_UNKNOWN`, `NUMBER_RANGE`,
 * `CHART_INVALID`, `MODEL_UNKNOWN`, and what a harp's name throws
 * @example
 * ```ts
 * import { composeLine } from '@reedplate/practice';
 * import { makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('basic', 'G');
 * const { steps } = composeLine(chart, 'C', { seed: 3 });
 * [...new Set(steps.map(({ phrase }) => phrase))]; // => ['A', 'B']
 * steps.filter(({ bar, beat }) => bar === 5 && beat === 1).map(({ degree }) => degree); // => ['1']
 * composeLine(chart, 'C', { lowest: 61, highest: 61 }); // throws COMPOSE_IMPOSSIBLE
 * ```
 */
export function composeLine(
  chart: Chart,
  harp: HarpLike,
  options: ComposeOptions = {},
): ComposedLine {
  return doSteps(composeSteps(chart, harp, readComposeOptions(options)));
}

/** How {@link composeLineAsync} goes about it. */
export interface ComposeAsyncOptions extends ComposeOptions {
  /** Ends the call when it is aborted. */
  readonly signal?: StopSignal;
}

/**
 * What {@link composeLine} gives, worked out in stretches of some milliseconds with other work in between: a
 * page stays alive, and a signal ends it between one note and the next.
 *
 * @throws ReedplateError as {@link composeLine}; the reason of the signal where it is aborted
 * @example
 * ```ts
 * import { composeLineAsync } from '@reedplate/practice';
 * import { makeChart } from '@reedplate/form';
 *
 * const chart = makeChart('basic', 'G');
 * const { seed } = await composeLineAsync(chart, 'C', { seed: 3, signal: AbortSignal.timeout(2000) });
 * seed; // => 3
 * ```
 */
export async function composeLineAsync(
  chart: Chart,
  harp: HarpLike,
  options: ComposeAsyncOptions = {},
): Promise<ComposedLine> {
  const { signal, ...rest } = requireOptions(options, COMPOSE_ASYNC_OPTIONS, 'composeLineAsync');
  return doStepsInTurn(composeSteps(chart, harp, readComposeOptions(rest)), signal);
}

const COMPOSE_ASYNC_OPTIONS: OptionNames<ComposeAsyncOptions> = {
  ...COMPOSE_OPTIONS,
  signal: true,
};

function* composeSteps(
  chart: Chart,
  harp: HarpLike,
  { seed = 1, plan, ...given }: ComposeOptions,
): Steps<ComposedLine> {
  const bars = barsPerChorus(checkChart(chart));
  // A long chart takes its time to look through.
  yield;
  const letters = plan === undefined ? usualPlan(bars) : requirePlan(plan, bars);
  const steps = yield* drawAll(chart, letters, groundOf(chart, harp, seed, given));
  return Object.freeze({ seed, steps: Object.freeze(steps), line: lineOf(steps, chart) });
}

type Given = Omit<ComposeOptions, 'seed' | 'plan'>;

function groundOf(chart: Chart, given: HarpLike, seed: number, options: Given): PhraseGround {
  const { level = 'bends', known, effortModel = 'intermediate' } = options;
  const { pitchClass: tonic, mode } = parseKey(chart.key);
  const usual = mode === 'minor' ? MINOR_MELODY_MODEL : DEFAULT_MELODY_MODEL;
  const { density = DEFAULT_DENSITY, model = usual } = options;
  const harp = toHarp(given, known);
  const { beatTicks, beatsPerBar } = parseMetre(chart.metre);
  const { cells = beatTicks % 960 === 0 ? CELLS_OF_TWO : CELLS_OF_THREE } = options;
  const random = randomFrom(seed);
  const frame = { beatsPerBar, beatTicks };
  return {
    soundings: soundings(harp, { level: withOneHome(harp, level, tonic) }),
    tonic,
    model,
    secondsPerTick: SECONDS_PER_MINUTE / (chart.tempo ?? DEFAULT_LINE_TEMPO) / beatTicks,
    moves: moveEffort(toEffortModel(effortModel, known)),
    drawRhythm: (bars) => drawRhythm({ bars, ...frame }, cells, density, random),
    must: mustHoldOf(options, harp),
    random,
  };
}

function* drawAll(
  chart: Chart,
  plan: string,
  ground: PhraseGround,
): Steps<readonly ComposedStep[]> {
  const steps: ComposedStep[] = [];
  for (const places of phrasesOf(chart, plan)) {
    const drawn = yield* drawPhrase(places, ground);
    if (!('beats' in drawn)) throw impossible(chart, itemAt(places, 0).letter, drawn);
    steps.push(...places.flatMap((place, at) => stepsOf(place, drawn, at, chart)));
  }
  return steps.sort((a, b) => a.start - b.start);
}

function impossible({ form }: Chart, letter: string, names: readonly string[]): ReedplateError {
  const together = names.length === 1 ? 'cannot hold' : 'cannot hold together';
  return new ReedplateError({
    code: 'COMPOSE_IMPOSSIBLE',
    value: form,
    expected: `other constraints: in phrase ${letter} ${names.join(', ')} ${together}`,
  });
}

function stepsOf(
  place: PhrasePlace,
  { beats, soundings: all }: DrawnPhrase,
  at: number,
  { metre, pickup }: Chart,
): readonly ComposedStep[] {
  return beats.map(({ start, duration }, note) => {
    const sounding = all[at]?.[note] as Sounding;
    const from = place.start + start;
    const chord = chordIn(place, from);
    const pitchClass = toPitchClass(sounding.pitch);
    const tone = chord?.tones.find((each) => each.pitchClass === pitchClass);
    return Object.freeze({
      phrase: place.letter,
      ...barBeatAt(from, { metre, pickup }),
      start: from,
      duration,
      chord,
      degree: tone?.degree ?? null,
      sounding,
    });
  });
}

function lineOf(steps: readonly ComposedStep[], { metre, pickup, tempo }: Chart): Line {
  const notes = steps.map(({ start, duration, sounding: { pitch } }) => ({
    start,
    duration,
    pitch,
  }));
  return makeLine(notes, { metre, pickup, ...(tempo === undefined ? {} : { tempo }) });
}
