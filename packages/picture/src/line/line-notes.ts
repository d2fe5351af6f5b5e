import { type Chart, type ChordSpan, chordChanges } from '@reedplate/form';
import type { Harp, PlayerLike, Sounding } from '@reedplate/layout';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import { bestPath, eventsOf, type LineEvent } from '@reedplate/playability';
import { formatTab, markOf } from '@reedplate/tab';

/** A event of a line, ready to be drawn. */
export interface LineNote {
  /** Ticks after bar 1, below 0 in the pickup. */
  readonly start: number;
  readonly end: number;
  /** What sounds it; none where the harp cannot. */
  readonly soundings: readonly Sounding[];
  /** Its tab, `?` where there is none. */
  readonly label: string;
}

/** What an event is sounded with, for each event of a line in order. */
export type LineSoundings = readonly (readonly Sounding[])[];

/** The notes of a line, with the soundings given or else the easiest. */
export function notesOf(
  line: Line,
  harp: Harp,
  given: LineSoundings | undefined,
  level: PlayerLike,
): readonly LineNote[] {
  const events = eventsOf(line);
  if (given !== undefined && !(Array.isArray(given) && given.length === events.length)) {
    throw new ReedplateError({
      code: 'OPTION_UNKNOWN',
      value: Array.isArray(given) ? given.length : given,
      expected: `soundings for each of the ${events.length} events of the line`,
    });
  }
  const soundings = given ?? easiest(line, harp, events, level);
  const barOne = barOneOf(line);
  return events.map(({ start, end }, at) => {
    const sounded = soundings[at] ?? [];
    const label = sounded.length === 0 ? '?' : formatTab([sounded.map(markOf)]);
    return { start: start - barOne, end: end - barOne, soundings: sounded, label };
  });
}

/** The tick at which bar 1 of a line begins. */
export function barOneOf({ metre, pickup, countIn = 0 }: Line): number {
  return pickup + countIn * parseMetre(metre).barTicks;
}

/** The easiest path; where the harp lacks an event, that of the rest. */
function easiest(
  line: Line,
  harp: Harp,
  events: readonly LineEvent[],
  level: PlayerLike,
): LineSoundings {
  const path = bestPath(line, harp, { level });
  if (path.playable) return path.soundings;
  const had = events.map((event) => bestPath(only(line, [event]), harp, { level }).playable);
  if (!had.includes(true)) return events.map(() => []);
  const rest = bestPath(
    only(
      line,
      events.filter((_, at) => had[at]),
    ),
    harp,
    { level },
  );
  const found = rest.playable ? [...rest.soundings] : [];
  return had.map((isHad) => (isHad ? (found.shift() ?? []) : []));
}

function only(line: Line, events: readonly LineEvent[]): Line {
  const notes = events.flatMap(({ start, end, pitches }) =>
    pitches.map((pitch) => ({ start, duration: end - start, pitch })),
  );
  return makeLine(notes, { metre: line.metre, pickup: line.pickup });
}

/** A chord change over a line, in ticks after its bar 1. */
export interface LineChord extends Pick<ChordSpan, 'numeral'> {
  readonly start: number;
  readonly end: number;
  readonly name: string;
}

/** The changes of a chart, counted from bar 1. */
export function chordsOf(chart: Chart | undefined): readonly LineChord[] {
  if (chart === undefined) return [];
  return chordChanges(chart).map(({ start, end, numeral, chord }) => ({
    start: start - chart.pickup,
    end: end - chart.pickup,
    numeral,
    name: chord?.symbol ?? 'N.C.',
  }));
}
