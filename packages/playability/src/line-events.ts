import { type Line, parseMetre, requireNotes } from '@reedplate/line';
import { itemAt, requirePositive } from '@reedplate/pitch';

/**
 * Notes of a line that begin together and are sounded at once. A note that still sounds when the
 * next event begins is let go there: a player has one mouth.
 */
export interface LineEvent {
  /** First tick. */
  readonly start: number;
  /** Tick at which it is let go. */
  readonly end: number;
  /** MIDI numbers, rising, each once. */
  readonly pitches: readonly number[];
}

/**
 * The events of a line, in order: what a path chooses soundings for.
 *
 * @throws ReedplateError `LINE_EMPTY`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { eventsOf } from '@reedplate/playability';
 *
 * const line = makeLine([
 *   { start: 0, duration: 960, pitch: 67 },
 *   { start: 0, duration: 480, pitch: 71 },
 *   { start: 720, duration: 480, pitch: 74 },
 * ]);
 * eventsOf(line)[0]; // => { start: 0, end: 720, pitches: [67, 71] }
 * eventsOf(makeLine([])); // throws LINE_EMPTY
 * ```
 */
export function eventsOf(line: Line): readonly LineEvent[] {
  const { notes } = requireNotes(line);
  const events: LineEvent[] = [];
  for (let first = 0, next = 0; first < notes.length; first = next) {
    const { start } = itemAt(notes, first);
    let end = 0;
    const pitches: number[] = [];
    for (; notes[next]?.start === start; next += 1) {
      const { duration, pitch } = notes[next] as (typeof notes)[number];
      end = Math.max(end, start + duration);
      if (pitches.at(-1) !== pitch) pitches.push(pitch);
    }
    const letGo = Math.min(end, notes[next]?.start ?? end);
    events.push(Object.freeze({ start, end: letGo, pitches: Object.freeze(pitches) }));
  }
  return Object.freeze(events);
}

/** Tempo of a line that has none and of a call that gives none, in felt beats a minute. */
export const DEFAULT_LINE_TEMPO = 100;

/**
 * Seconds a tick lasts.
 *
 * @throws ReedplateError `NUMBER_RANGE` for a tempo that is not above 0
 */
export function secondsPerTick({ metre, tempo: own }: Line, tempo?: number): number {
  const beats = requirePositive(tempo ?? own ?? DEFAULT_LINE_TEMPO, {
    max: 1000,
    what: 'felt beats a minute',
  });
  return 60 / (beats * parseMetre(metre).beatTicks);
}
