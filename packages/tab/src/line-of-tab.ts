import {
  BREATHS,
  type Harp,
  type HarpLike,
  type KnownTunings,
  type PlayerLike,
  type Sounding,
  soundingsOfPitch,
  toHarp,
  toPlayer,
} from '@reedplate/layout';
import {
  barBeatAt,
  LINE_OPTIONS,
  type Line,
  type LineOptions,
  makeLine,
  parseMetre,
  requireLine,
  type TimedNote,
} from '@reedplate/line';
import {
  deepFreeze,
  noteNameWithOctave,
  type OptionNames,
  ReedplateError,
  requireOptions,
  requireShape,
} from '@reedplate/pitch';
import { SOUND_OPTIONS, type SoundOptions, soundMark } from './sound-tab.js';
import { markOf, requireMark, type TabMark } from './tab-mark.js';
import { requireTimed, type TimedTab } from './timed-tab.js';

/** How {@link lineOfTab} sounds and counts. */
export interface LineOfTabOptions extends SoundOptions, LineOptions {}

const LINE_OF_TAB_OPTIONS: OptionNames<LineOfTabOptions> = { ...SOUND_OPTIONS, ...LINE_OPTIONS };

/**
 * The line that tablature with rhythm sounds on a harp.
 *
 * @throws ReedplateError `HOLE_RANGE`, `SOUNDING_IMPOSSIBLE`, `METRE_UNKNOWN`, `LINE_INVALID`
 * @example
 * ```ts
 * import { lineOfTab, parseTimedTab } from '@reedplate/tab';
 *
 * lineOfTab(parseTimedTab('-2:2 +4'), 'C').notes;
 * // => [{ start: 0, duration: 1920, pitch: 67 }, { start: 1920, duration: 960, pitch: 72 }]
 * lineOfTab(parseTimedTab('-11'), 'C'); // throws HOLE_RANGE
 * ```
 */
export function lineOfTab(
  timed: readonly TimedTab[],
  given: HarpLike,
  options: LineOfTabOptions = {},
): Line {
  const { valved, known, ...rest } = requireOptions(options, LINE_OF_TAB_OPTIONS, 'lineOfTab');
  const harp = toHarp(given, known);
  const sounding = valved === undefined ? {} : { valved };
  const { beatTicks } = parseMetre(rest.metre ?? '4/4');
  const notes: TimedNote[] = [];
  let beat = 0;
  for (const { marks, beats } of requireTimed(timed)) {
    const start = Math.round(beat * beatTicks);
    beat += beats;
    const duration = Math.max(1, Math.round(beat * beatTicks) - start);
    for (const mark of marks) {
      notes.push({ start, duration, pitch: soundMark(mark, harp, sounding).pitch });
    }
  }
  return makeLine(notes, rest);
}

/** How {@link tabOfLine} chooses. */
export interface TabOfLineOptions {
  /** Who plays, by a level or as a `Player`; default `bends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
  /** What sounds each event of the line, as a path or a practice line has chosen it; empty for the plainest. */
  readonly soundings?: readonly (readonly Sounding[])[];
}

const TAB_OF_LINE_OPTIONS: OptionNames<TabOfLineOptions> = {
  level: true,
  known: true,
  soundings: true,
};

/**
 * Tablature with rhythm of a line on a harp. A note by itself is written in its plainest way: natural
 * before bent before overbent, the lowest hole on a tie. Notes that begin together are one chord, on one
 * breath where the harp has them so, and end with the first of them, or where the next begins. Whoever
 * has chosen a way already, by `bestPath` of playability or a practice line, gives it as `soundings`.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` with `where.bar` for a note that the harp does not have;
 *   `OPTION_UNKNOWN` for soundings that are not one for each event
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { formatTimedTab, tabOfLine } from '@reedplate/tab';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }, { start: 1440, duration: 480, pitch: 70 }]);
 * formatTimedTab(tabOfLine(line, 'C')); // => "-2 r:1/2 -3':1/2"
 * tabOfLine(line, 'C', { level: 'natural' }); // throws SOUNDING_IMPOSSIBLE
 * ```
 */
export function tabOfLine(
  line: Line,
  given: HarpLike,
  options: TabOfLineOptions = {},
): readonly TimedTab[] {
  const {
    level = 'bends',
    known,
    soundings,
  } = requireOptions(options, TAB_OF_LINE_OPTIONS, 'tabOfLine');
  const harp = toHarp(given, known);
  const { beatTicks } = parseMetre(requireLine(line).metre);
  const attacks = attacksOf(line);
  if (soundings !== undefined && soundings.length !== attacks.length) {
    throw new ReedplateError({
      code: 'OPTION_UNKNOWN',
      value: soundings.length,
      expected: `soundings for each of the ${attacks.length} events of the line`,
    });
  }
  const timed: TimedTab[] = [];
  let at = 0;
  for (const [index, { start, end, pitches }] of attacks.entries()) {
    if (start > at) timed.push({ marks: [], beats: (start - at) / beatTicks });
    const chosen = soundings?.[index] ?? [];
    const marks =
      chosen.length > 0
        ? chosen.map(markOf)
        : marksOf(pitches, harp, level, barBeatAt(start, line).bar);
    timed.push({ marks, beats: (end - start) / beatTicks });
    at = end;
  }
  return deepFreeze(timed);
}

function marksOf(
  pitches: readonly number[],
  harp: Harp,
  level: PlayerLike,
  bar: number,
): readonly TabMark[] {
  const together = pitches.length > 1 ? marksTogether(pitches, harp) : undefined;
  return together ?? pitches.map((pitch) => plainestMark(pitch, harp, level, bar));
}

/** Unbent notes on one breath within a mouth's width, the narrower breath first. */
function marksTogether(pitches: readonly number[], harp: Harp): readonly TabMark[] | undefined {
  const grips = BREATHS.flatMap((breath) => {
    const ways = pitches.map((pitch) =>
      soundingsOfPitch(harp, pitch, { level: 'natural' }).find((way) => way.breath === breath),
    );
    const marks = ways.flatMap((way) => (way === undefined ? [] : [markOf(way)]));
    return marks.length === pitches.length && liesTogether(marks) ? [marks] : [];
  });
  return grips.sort((a, b) => widthOf(a) - widthOf(b))[0];
}

/** Most holes a mouth covers at once. Common practice, no source. */
const WIDEST_MOUTH = 5;

/**
 * Whether marks can sound together: one breath, each hole once, within the width of a mouth.
 *
 * @throws ReedplateError `TAB_SYNTAX` for what is no list of marks
 * @example
 * ```ts
 * import { liesTogether, parseTab } from '@reedplate/tab';
 *
 * parseTab('(-2-3-4) (-2+4)').map(liesTogether); // => [true, false]
 * ```
 */
export function liesTogether(marks: readonly TabMark[]): boolean {
  const words = { what: 'a list of marks', code: 'TAB_SYNTAX' } as const;
  requireShape({ marks }, { marks: 'list' }, words);
  for (const mark of marks) requireMark(mark);
  const [first] = marks;
  const holes = new Set(marks.map(({ hole }) => hole));
  return (
    marks.every(({ breath }) => breath === first?.breath) &&
    holes.size === marks.length &&
    (marks.length < 2 || widthOf(marks) <= WIDEST_MOUTH)
  );
}

function widthOf(marks: readonly TabMark[]): number {
  const holes = marks.map(({ hole }) => hole);
  return Math.max(...holes) - Math.min(...holes) + 1;
}

interface Attack {
  readonly start: number;
  readonly end: number;
  readonly pitches: readonly number[];
}

function attacksOf({ notes }: Line): readonly Attack[] {
  const attacks: { start: number; end: number; pitches: number[] }[] = [];
  for (const { start, duration, pitch } of notes) {
    const last = attacks.at(-1);
    if (last?.start === start) {
      last.pitches.push(pitch);
      last.end = Math.min(last.end, start + duration);
    } else {
      if (last !== undefined) last.end = Math.min(last.end, start);
      attacks.push({ start, end: start + duration, pitches: [pitch] });
    }
  }
  return attacks;
}

const PLAINNESS = ['natural', 'bend', 'valved-bend', 'overblow', 'overdraw'] as const;

function plainestMark(pitch: number, harp: Harp, level: PlayerLike, bar: number): TabMark {
  const ways = soundingsOfPitch(harp, pitch, { level });
  const [plainest] = [...ways].sort(
    (a, b) => PLAINNESS.indexOf(a.technique) - PLAINNESS.indexOf(b.technique) || a.hole - b.hole,
  );
  if (plainest !== undefined) return markOf(plainest);
  const isThere = soundingsOfPitch(harp, pitch, { level: 'overbends' }).length > 0;
  const beyond = isThere ? ' (overbends have it)' : '';
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: noteNameWithOctave(pitch),
    expected: `a note of this harp in ${harp.key} at the level of ${toPlayer(level).id}${beyond}`,
    where: { bar },
  });
}
