import {
  type Harp,
  type HarpLike,
  type KnownTunings,
  soundingsOfPitch,
  type TechniqueLevel,
  toHarp,
} from '@reedplate/layout';
import {
  barBeatAt,
  LINE_OPTIONS,
  type Line,
  type LineOptions,
  makeLine,
  parseMetre,
  type TimedNote,
} from '@reedplate/line';
import {
  noteNameWithOctave,
  type OptionNames,
  ReedplateError,
  requireOptions,
} from '@reedplate/pitch';
import { SOUND_OPTIONS, type SoundOptions, soundMark } from './sound-tab.js';
import { markOf, type TabMark } from './tab-mark.js';
import type { TimedTab } from './timed-tab.js';

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
  for (const { marks, beats } of timed) {
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
  /** What the player can do; default `overbends`: everything. */
  readonly level?: TechniqueLevel;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const TAB_OF_LINE_OPTIONS: OptionNames<TabOfLineOptions> = { level: true, known: true };

/**
 * Tablature with rhythm of a line on a harp, each note by itself in its plainest way: natural before
 * bent before overbent, the lowest hole on a tie. Notes that begin together are one chord and end
 * with the first of them, or where the next begins. `bestPath` of playability finds the way that
 * lies best in the hand.
 *
 * @throws ReedplateError `SOUNDING_IMPOSSIBLE` with `where.bar` for a note that the harp does not have
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
  const { level = 'overbends', known } = requireOptions(options, TAB_OF_LINE_OPTIONS, 'tabOfLine');
  const harp = toHarp(given, known);
  const { beatTicks } = parseMetre(line.metre);
  const timed: TimedTab[] = [];
  let at = 0;
  for (const { start, end, pitches } of attacksOf(line)) {
    if (start > at) timed.push({ marks: [], beats: (start - at) / beatTicks });
    const { bar } = barBeatAt(start, line);
    const marks = pitches.map((pitch) => plainestMark(pitch, harp, level, bar));
    timed.push({ marks, beats: (end - start) / beatTicks });
    at = end;
  }
  return Object.freeze(timed.map((each) => Object.freeze(each)));
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

function plainestMark(pitch: number, harp: Harp, level: TechniqueLevel, bar: number): TabMark {
  const ways = soundingsOfPitch(harp, pitch, { level });
  const [plainest] = [...ways].sort(
    (a, b) => PLAINNESS.indexOf(a.technique) - PLAINNESS.indexOf(b.technique) || a.hole - b.hole,
  );
  if (plainest !== undefined) return markOf(plainest);
  throw new ReedplateError({
    code: 'SOUNDING_IMPOSSIBLE',
    value: noteNameWithOctave(pitch),
    expected: `a note of this harp in ${harp.key} at the level of ${level}`,
    where: { bar },
  });
}
