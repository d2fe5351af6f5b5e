import { type ErrorPlace, HIGHEST_MIDI, requireInteger, requirePositive } from '@reedplate/pitch';
import { invalidLine } from './invalid-line.js';
import type { Line, TimedNote } from './line.js';
import { type Metre, parseMetre } from './metre.js';

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
 * Makes a line from notes: checked, sorted by start, then pitch, then duration, frozen. The notes
 * given are not changed. A line may be empty; what needs a note says so.
 *
 * @throws ReedplateError `LINE_INVALID` with `where.path` (and `where.index` of a note), or
 * `METRE_UNKNOWN`
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
  const { barTicks } = parseMetre(metre);
  if (!Array.isArray(notes)) throw invalidLine(notes, 'a list of notes', { path: 'notes' });
  // Array.from visits the gaps of a sparse list too, which map would pass over.
  const checked = Array.from(notes as readonly TimedNote[], checkNote).sort(inOrder);
  return Object.freeze({
    metre,
    pickup: requireTicks(pickup, 0, barTicks - 1, { path: 'pickup' }),
    ...(tempo === undefined ? {} : { tempo: checkTempo(tempo) }),
    ...(title === undefined ? {} : { title: checkTitle(title) }),
    notes: Object.freeze(checked),
  });
}

/** The length settles what start and pitch leave open, so that order never hangs on the input's. */
function inOrder(a: TimedNote, b: TimedNote): number {
  return a.start - b.start || a.pitch - b.pitch || a.duration - b.duration;
}

function checkNote(note: TimedNote, index: number): TimedNote {
  if (typeof note !== 'object' || note === null) {
    throw invalidLine(note, 'a note with start, duration and pitch', {
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
  return requirePositive(tempo, {
    max: FASTEST_TEMPO,
    what: 'felt beats a minute',
    code: 'LINE_INVALID',
    where: { path: 'tempo' },
  });
}

function checkTitle(title: unknown): string {
  if (typeof title === 'string') return title;
  throw invalidLine(title, 'text', { path: 'title' });
}
