import { type Chart, type ChordSpan, chordChanges } from '@reedplate/form';
import type { Harp, Sounding, TechniqueLevel } from '@reedplate/layout';
import { type Line, makeLine, parseMetre } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import { bestPath, type LineMoment, momentsOf } from '@reedplate/playability';
import { formatTab, markOf } from '@reedplate/tab';

/** A moment of a line, ready to be drawn. */
export interface LineNote {
  /** Ticks after bar 1, below 0 in the pickup. */
  readonly start: number;
  readonly end: number;
  /** What sounds it; none where the harp cannot. */
  readonly soundings: readonly Sounding[];
  /** Its tab, `?` where there is none. */
  readonly label: string;
}

/** What a moment is sounded with, for each moment of a line in order. */
export type LineSoundings = readonly (readonly Sounding[])[];

/** The notes of a line, with the soundings given or else the easiest. */
export function notesOf(
  line: Line,
  harp: Harp,
  given: LineSoundings | undefined,
  level: TechniqueLevel,
): readonly LineNote[] {
  const moments = momentsOf(line);
  if (given !== undefined && !(Array.isArray(given) && given.length === moments.length)) {
    throw new ReedplateError({
      code: 'OPTION_UNKNOWN',
      value: Array.isArray(given) ? given.length : given,
      expected: `soundings for each of the ${moments.length} moments of the line`,
    });
  }
  const soundings = given ?? easiest(line, harp, moments, level);
  const barOne = barOneOf(line);
  return moments.map(({ start, end }, at) => {
    const sounded = soundings[at] ?? [];
    const label = sounded.length === 0 ? '?' : formatTab([sounded.map(markOf)]);
    return { start: start - barOne, end: end - barOne, soundings: sounded, label };
  });
}

/** The tick at which bar 1 of a line begins. */
export function barOneOf({ metre, pickup, countIn = 0 }: Line): number {
  return pickup + countIn * parseMetre(metre).barTicks;
}

/** The easiest path; where the harp lacks a moment, that of the rest. */
function easiest(
  line: Line,
  harp: Harp,
  moments: readonly LineMoment[],
  level: TechniqueLevel,
): LineSoundings {
  const path = bestPath(line, harp, { level });
  if (path.playable) return path.soundings;
  const had = moments.map((moment) => bestPath(only(line, [moment]), harp, { level }).playable);
  if (!had.includes(true)) return moments.map(() => []);
  const rest = bestPath(
    only(
      line,
      moments.filter((_, at) => had[at]),
    ),
    harp,
    { level },
  );
  const found = rest.playable ? [...rest.soundings] : [];
  return had.map((isHad) => (isHad ? (found.shift() ?? []) : []));
}

function only(line: Line, moments: readonly LineMoment[]): Line {
  const notes = moments.flatMap(({ start, end, pitches }) =>
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
