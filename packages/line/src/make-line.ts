import { type ErrorPlace, HIGHEST_MIDI, ReedplateError, requireInteger } from '@reedplate/pitch';
import type { Line, TimedNote } from './line.js';
import { type Metre, readMetre } from './metre.js';

/** What {@link makeLine} fills in. */
export interface LineOptions {
  /** Default `4/4`. */
  readonly metre?: Metre;
  /** Ticks before bar 1, from 0 and less than a bar; default 0. */
  readonly pickup?: number;
  /** Felt beats a minute, above 0 and at most 1000; default none. */
  readonly tempo?: number;
  /** Default none. */
  readonly title?: string;
}

/** Longest line held: 2^40 ticks, years of music, still exact in every sum made of it. */
const LATEST_TICK = 2 ** 40;
const FASTEST_TEMPO = 1000;

/**
 * Makes a line from notes: checked, sorted by start and then pitch, frozen. The notes given are
 * not changed. A line may be empty; what needs a note says so.
 *
 * @throws ReedplateError `LINE_INVALID` with `where.path` and `where.index` of the note, or `METRE_UNKNOWN`
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 *
 * makeLine([{ start: 0, duration: 960, pitch: 67 }]).metre; // => '4/4'
 * makeLine([{ start: -1, duration: 960, pitch: 67 }]); // throws LINE_INVALID
 * ```
 */
export function makeLine(notes: readonly TimedNote[], options: LineOptions = {}): Line {
  const { metre = '4/4', pickup = 0, tempo, title } = options;
  const { barTicks } = readMetre(metre);
  const checked = notes.map(checkNote).sort((a, b) => a.start - b.start || a.pitch - b.pitch);
  return Object.freeze({
    metre,
    pickup: requireTicks(pickup, 0, barTicks - 1, { path: 'pickup' }),
    ...(tempo === undefined ? {} : { tempo: checkTempo(tempo) }),
    ...(title === undefined ? {} : { title: checkTitle(title) }),
    notes: Object.freeze(checked),
  });
}

function checkNote(note: TimedNote, index: number): TimedNote {
  if (typeof note !== 'object' || note === null) {
    throw invalid(note, 'a note with start, duration and pitch', {
      path: `notes[${index}]`,
      index,
    });
  }
  const at = (field: string): ErrorPlace => ({ path: `notes[${index}].${field}`, index });
  const start = requireTicks(note.start, 0, LATEST_TICK, at('start'));
  const duration = requireTicks(note.duration, 1, LATEST_TICK, at('duration'));
  const pitch = requireInteger(note.pitch, {
    min: 0,
    max: HIGHEST_MIDI,
    what: 'a MIDI note number',
    code: 'LINE_INVALID',
    where: at('pitch'),
  });
  return Object.freeze({ start, duration, pitch });
}

function requireTicks(value: unknown, min: number, max: number, where: ErrorPlace): number {
  return requireInteger(value, { min, max, what: 'whole ticks', code: 'LINE_INVALID', where });
}

function checkTempo(tempo: unknown): number {
  if (typeof tempo === 'number' && tempo > 0 && tempo <= FASTEST_TEMPO) return tempo;
  throw invalid(tempo, 'felt beats a minute, above 0 and at most 1000', { path: 'tempo' });
}

function checkTitle(title: unknown): string {
  if (typeof title === 'string') return title;
  throw invalid(title, 'text', { path: 'title' });
}

function invalid(value: unknown, expected: string, where: ErrorPlace): ReedplateError {
  return new ReedplateError({ code: 'LINE_INVALID', value, expected, where });
}
