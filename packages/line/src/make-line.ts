import { type OptionNames, requireInteger, requireOptions } from '@reedplate/pitch';
import { checkNote } from './check-note.js';
import { checkTempos } from './check-tempo.js';
import { invalidLine, requireTicks } from './invalid-line.js';
import type { Line, TempoChange, TimedNote } from './line.js';
import { type Metre, parseMetre } from './metre.js';

/** What {@link makeLine} fills in. */
export interface LineOptions {
  /** Default `4/4`. */
  readonly metre?: Metre;
  /** Ticks before bar 1, from 0 and less than a bar; default 0. */
  readonly pickup?: number;
  /** Whole bars counted in before bar 1, at the beginning of the line, 0 to 64; default 0. */
  readonly countIn?: number;
  /** Felt beats a minute, above 0 and at most 1000; default none. */
  readonly tempo?: number;
  /** Where the tempo changes after the beginning, in rising order; default nowhere. */
  readonly tempoChanges?: readonly TempoChange[];
  /** Default none. */
  readonly title?: string;
}

/**
 * The names of all options of a line.
 *
 * @internal
 */
export const LINE_OPTIONS: OptionNames<LineOptions> = Object.freeze({
  metre: true,
  pickup: true,
  countIn: true,
  tempo: true,
  tempoChanges: true,
  title: true,
});

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
 * makeLine([{ start: 0, duration: 960, pitch: 67, velocity: 96, cents: -18 }]).notes[0]?.cents; // => -18
 * makeLine([{ start: -1, duration: 960, pitch: 67 }]); // throws LINE_INVALID
 * makeLine([{ start: 0, duration: 960, pitch: 67, velocity: 0 }]); // throws LINE_INVALID
 * ```
 */
export function makeLine(notes: readonly TimedNote[], options: LineOptions = {}): Line {
  const { metre = '4/4', title } = requireOptions(options, LINE_OPTIONS, 'makeLine');
  const { barTicks } = parseMetre(metre);
  if (!Array.isArray(notes)) throw invalidLine(notes, 'a list of notes', { path: 'notes' });
  // Array.from visits the gaps of a sparse list too, which map would pass over.
  const checked = Array.from(notes as readonly TimedNote[], checkNote).sort(inOrder);
  return Object.freeze({
    metre,
    ...checkLead(options, barTicks),
    ...checkTempos(options),
    ...(title === undefined ? {} : { title: checkTitle(title) }),
    notes: Object.freeze(checked),
  });
}

/** What the times leave open is settled by how notes are played, so that order never hangs on the input's. */
function inOrder(a: TimedNote, b: TimedNote): number {
  return a.start - b.start || a.pitch - b.pitch || a.duration - b.duration || inText(a, b);
}

function inText(a: TimedNote, b: TimedNote): number {
  const [first, second] = [JSON.stringify(a), JSON.stringify(b)];
  if (first === second) return 0;
  return first < second ? -1 : 1;
}

const LONGEST_COUNT_IN = 64;

/** What comes before bar 1: a pickup, or bars counted in with the pickup among them. */
export function checkLead(
  { pickup = 0, countIn = 0 }: LineOptions,
  barTicks: number,
): Pick<Line, 'pickup' | 'countIn'> {
  const counted = requireInteger(countIn, {
    min: 0,
    max: LONGEST_COUNT_IN,
    what: 'bars counted in',
    code: 'LINE_INVALID',
    where: { path: 'countIn' },
  });
  if (counted > 0 && pickup !== 0) {
    const expected = '0 with a count-in: a pickup sounds within its last bar';
    throw invalidLine(pickup, expected, { path: 'pickup' });
  }
  return {
    pickup: requireTicks(pickup, { min: 0, max: barTicks - 1 }, { path: 'pickup' }),
    ...(counted === 0 ? {} : { countIn: counted }),
  };
}

function checkTitle(title: unknown): string {
  if (typeof title === 'string') return title;
  throw invalidLine(title, 'text', { path: 'title' });
}
