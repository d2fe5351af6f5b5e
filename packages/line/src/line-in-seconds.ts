import { type OptionNames, requireOptions } from '@reedplate/pitch';
import { invalidLine } from './invalid-line.js';
import type { Line, NoteExpression, PitchPoint, TimedNote } from './line.js';
import { LINE_OPTIONS, type LineOptions, makeLine } from './make-line.js';
import { requireLine } from './require-line.js';
import { type TempoMap, tempoMapOf } from './tempo-map.js';

/** A point of a pitch curve, in seconds. */
export interface PitchPointInSeconds {
  /** Seconds after the note begins, from 0 to the note's duration. */
  readonly at: number;
  /** Cents above the note's pitch. */
  readonly cents: number;
}

/** A note in seconds, as it comes from a recording or goes to a player of sound. */
export interface NoteInSeconds extends Omit<NoteExpression, 'curve'> {
  /** Seconds from the beginning, from 0. */
  readonly start: number;
  /** Seconds held, above 0. */
  readonly duration: number;
  /** MIDI number; C4 is 60. */
  readonly pitch: number;
  readonly curve?: readonly PitchPointInSeconds[];
}

/** What {@link lineFromSeconds} counts by. */
export interface LineFromSecondsOptions extends LineOptions {
  /** Second at which tick 0 lies; default 0. */
  readonly from?: number;
}

const FROM_SECONDS_OPTIONS: OptionNames<LineFromSecondsOptions> = { ...LINE_OPTIONS, from: true };

/**
 * A line of notes in seconds, each laid on the nearest tick: what a recording gives, or a player of
 * sound. A note shorter than a tick lasts one.
 *
 * @param options as for `makeLine`; `tempo` is needed
 * @throws ReedplateError `TEMPO_MISSING`, `METRE_UNKNOWN`, `LINE_INVALID` with `where.path`
 * @example
 * ```ts
 * import { lineFromSeconds } from '@reedplate/line';
 *
 * const heard = [{ start: 0.5, duration: 0.25, pitch: 67, cents: -12 }];
 * lineFromSeconds(heard, { tempo: 120 }).notes; // => [{ start: 960, duration: 480, pitch: 67, cents: -12 }]
 * lineFromSeconds(heard, { tempo: 120, from: 0.5 }).notes[0]?.start; // => 0
 * lineFromSeconds(heard, {}); // throws TEMPO_MISSING
 * lineFromSeconds(heard, { tempo: 120, from: 1 }); // throws LINE_INVALID
 * ```
 */
export function lineFromSeconds(
  notes: readonly NoteInSeconds[],
  options: LineFromSecondsOptions,
): Line {
  const { from = 0, ...head } = requireOptions(options, FROM_SECONDS_OPTIONS, 'lineFromSeconds');
  // The head is checked first, so that the map rests on tempos in order.
  const map = tempoMapOf(makeLine([], head));
  if (!Number.isFinite(from)) throw invalidLine(from, 'a number of seconds', { path: 'from' });
  if (!Array.isArray(notes)) throw invalidLine(notes, 'a list of notes', { path: 'notes' });
  const timed = Array.from(notes as readonly NoteInSeconds[], (note, index) =>
    toTicks(note, index, { map, from }),
  );
  return makeLine(timed, head);
}

function toTicks(
  note: NoteInSeconds,
  index: number,
  { map, from }: { readonly map: TempoMap; readonly from: number },
): TimedNote {
  const place = (field: string) => ({ path: `notes[${index}]${field}`, index });
  if (typeof note !== 'object' || note === null) {
    throw invalidLine(note, 'a note with start, duration and pitch', place(''));
  }
  const { start, duration, curve, ...rest } = note;
  if (!(Number.isFinite(start) && start >= from)) {
    throw invalidLine(start, `seconds, from ${from}`, place('.start'));
  }
  if (!(Number.isFinite(duration) && duration > 0)) {
    throw invalidLine(duration, 'seconds, above 0', place('.duration'));
  }
  if (curve !== undefined && !Array.isArray(curve)) {
    throw invalidLine(curve, 'a list of points', place('.curve'));
  }
  const tickOf = (seconds: number): number => Math.round(map.tick(seconds - from));
  const first = tickOf(start);
  const ticks = Math.max(1, tickOf(start + duration) - first);
  const points = curve?.map((point: PitchPointInSeconds, at: number): PitchPoint => {
    const seconds: unknown = Object(point).at;
    if (typeof seconds === 'number' && seconds >= 0 && seconds <= duration) {
      return { ...point, at: Math.min(ticks, tickOf(start + seconds) - first) };
    }
    throw invalidLine(seconds, `seconds within the note`, place(`.curve[${at}].at`));
  });
  return { ...rest, start: first, duration: ticks, ...(points && { curve: onceATick(points) }) };
}

/** Of points that fall on one tick, the last. */
function onceATick(points: readonly PitchPoint[]): readonly PitchPoint[] {
  return points.filter(({ at }, index) => at !== points[index + 1]?.at);
}

/**
 * The notes of a line in seconds from tick 0, to be played: the inverse of {@link lineFromSeconds}.
 *
 * @throws ReedplateError `TEMPO_MISSING`, or `LINE_INVALID` for what is no line
 * @example
 * ```ts
 * import { makeLine, notesInSeconds } from '@reedplate/line';
 *
 * const notes = [{ start: 960, duration: 480, pitch: 67 }];
 * notesInSeconds(makeLine(notes, { tempo: 120 })); // => [{ start: 0.5, duration: 0.25, pitch: 67 }]
 * notesInSeconds(makeLine(notes)); // throws TEMPO_MISSING
 * ```
 */
export function notesInSeconds(line: Line): readonly NoteInSeconds[] {
  const { notes } = requireLine(line);
  const { seconds } = tempoMapOf(line);
  return Object.freeze(
    notes.map(({ start, duration, curve, ...rest }): NoteInSeconds => {
      const from = seconds(start);
      const points = curve?.map(({ at, cents }) =>
        Object.freeze({ at: seconds(start + at) - from, cents }),
      );
      return Object.freeze({
        start: from,
        duration: seconds(start + duration) - from,
        ...rest,
        ...(points && { curve: Object.freeze(points) }),
      });
    }),
  );
}
