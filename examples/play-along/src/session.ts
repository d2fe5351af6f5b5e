import { type BandEvent, bandEvents, type GrooveId, makeBacking } from '@reedplate/backing';
import {
  type Chart,
  type Feel,
  type Form,
  makeChart,
  parseForm,
  toForm,
  varyForm,
} from '@reedplate/form';
import { type Harp, makeHarp, parseHarp, type Sounding, type TuningId } from '@reedplate/layout';
import { type Line, parseMetre, secondsAt } from '@reedplate/line';
import { parseKey } from '@reedplate/pitch';
import { pickHarps } from '@reedplate/position';
import { type PracticeKind, practiceLine } from '@reedplate/practice';
import type { SetUp } from './set-up.js';

/** A line to play along, with what sounds each note. */
export interface Shown {
  readonly line: Line;
  readonly soundings: readonly (readonly Sounding[])[];
}

/** All that is played and shown: what a set-up comes to. Seconds count from the first click. */
export interface Session {
  readonly form: Form;
  /** One time through the form. */
  readonly song: Chart;
  readonly harp: Harp;
  readonly level: SetUp['level'];
  /** What sounds, the count-in first; with a loop, one time through it. */
  readonly events: readonly BandEvent[];
  /** Seconds until bar 1. */
  readonly countIn: number;
  /** First and last bar of what is played. */
  readonly bars: readonly [number, number];
  /** Seconds of one time through these. */
  readonly passSeconds: number;
  /** Times through; without end where bars are looped. */
  readonly passes: number;
  readonly secondsOfBar: number;
  readonly shown: Shown | undefined;
}

/**
 * Works out a session.
 *
 * @throws ReedplateError for bars, keys or harps that there are not
 */
export function makeSession(setUp: SetUp): Session {
  const form = varyForm(formOf(setUp), setUp.variations);
  const song = chartOf(setUp, form, 1);
  const bars = barsOf(setUp, song.bars);
  const isLoop = setUp.loopFrom > 0;
  const secondsOfBar = secondsAt(parseMetre(song.metre).barTicks, song);
  const harp = harpOf(setUp, song);
  return {
    form,
    song,
    harp,
    level: setUp.level,
    events: isLoop
      ? loopEvents(setUp, song, { bars, secondsOfBar })
      : eventsOf(setUp, chartOf(setUp, form, setUp.choruses), true),
    countIn: setUp.countIn * secondsOfBar,
    bars,
    passSeconds: (bars[1] - bars[0] + 1) * secondsOfBar,
    passes: isLoop ? Number.POSITIVE_INFINITY : setUp.choruses,
    secondsOfBar,
    shown: shownOf(setUp, song, harp),
  };
}

function formOf({ form, ownBars }: SetUp): Form {
  return ownBars.trim() === '' ? toForm(form) : parseForm(ownBars, { id: 'own-bars' });
}

function chartOf({ key, tempo, feel }: SetUp, form: Form, choruses: number): Chart {
  const felt = feel === '' ? {} : { feel: feel as Feel };
  return makeChart(form, parseKey(key), { tempo, choruses, ...felt });
}

/** The bars that are played: those of the loop, within the form. */
function barsOf({ loopFrom, loopTo }: SetUp, last: number): readonly [number, number] {
  if (loopFrom === 0) return [1, last];
  const from = Math.min(loopFrom, last);
  return [from, Math.max(from, Math.min(loopTo === 0 ? last : loopTo, last))];
}

/** The harp that is asked for, or the best for the song. */
export function harpOf({ harp, tuning }: SetUp, song: Chart): Harp {
  if (harp !== '') return parseHarp(`${harp} ${tuning}`);
  const [best] = pickHarps(song.key, { chart: song, tuning: tuning as TuningId });
  return best === undefined ? makeHarp('C') : best.harp;
}

function shownOf({ line, level }: SetUp, song: Chart, harp: Harp): Shown | undefined {
  if (line === '') return undefined;
  const made = practiceLine(song, harp, { kind: line as PracticeKind, level });
  return { line: made.line, soundings: made.steps.map(({ soundings }) => soundings) };
}

function eventsOf(
  { countIn, click, groove }: SetUp,
  chart: Chart,
  ending: boolean,
): readonly BandEvent[] {
  const named = groove === '' ? {} : { groove: groove as GrooveId };
  return bandEvents(makeBacking(chart, { ...named, countIn, ending }), { click });
}

/** The count-in, and the bars of a loop once, moved to come after it. */
function loopEvents(
  setUp: SetUp,
  song: Chart,
  { bars, secondsOfBar }: Pick<Session, 'bars' | 'secondsOfBar'>,
): readonly BandEvent[] {
  const events = eventsOf(setUp, song, false);
  const begin = setUp.countIn * secondsOfBar;
  const from = begin + (bars[0] - 1) * secondsOfBar;
  const to = begin + bars[1] * secondsOfBar;
  const looped = events
    .filter(({ start }) => start >= from - EARLY && start < to - EARLY)
    .map((event) => ({
      ...event,
      start: Math.max(begin, event.start - from + begin),
      duration: Math.min(event.duration, to - event.start),
    }));
  return [...events.filter(({ start }) => start < begin - EARLY), ...looped];
}

/** Seconds by which sums of seconds may differ, so that a bar begins on its beat and not before. */
export const EARLY = 1e-6;
