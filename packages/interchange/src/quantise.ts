import {
  type Line,
  makeLine,
  parseMetre,
  requireLine,
  retimeNote,
  type TimedNote,
} from '@reedplate/line';
import {
  type OptionNames,
  ReedplateError,
  requireOneOf,
  requireOptions,
  requirePositive,
} from '@reedplate/pitch';
import { type BeatGrids, layGrid } from './beat-grids.js';
import { graceTargets } from './grace-notes.js';
import { removeSwing } from './swing.js';

/** Ticks from point to point of each grid; `t` is a triplet, three in the time of two. */
export const GRIDS = Object.freeze({
  '1/4': 960,
  '1/8': 480,
  '1/8t': 320,
  '1/16': 240,
  '1/16t': 160,
  '1/32': 120,
} as const);

/** Name of a grid: note values that a line is laid on. */
export type GridId = keyof typeof GRIDS;

/** The names of all grids, the widest first. */
export const GRID_IDS = Object.freeze(Object.keys(GRIDS)) as readonly GridId[];

/** How a line is quantised. */
export interface QuantiseOptions {
  /**
   * The grid, or several: then each beat is laid on the one that its notes lie nearest to, the first
   * of equals. Default `1/16`.
   */
  readonly grid?: GridId | readonly GridId[];
  /**
   * Long to short eighth as played, above 0 and at most 4: swing that is undone first, so that
   * swung eighths are written even. Default 1, none.
   */
  readonly swing?: number;
}

const LARGEST_SWING = 4;

const QUANTISE_OPTIONS: OptionNames<QuantiseOptions> = { grid: true, swing: true };

/**
 * A line played by hand, laid on a grid so that it can be read: every beginning on the nearest point,
 * every end likewise, or where the next note begins if that is within half a step, and at least one step
 * after the beginning. Order, pitches and the number of notes
 * stay, and so does how notes are played: curves are stretched with their notes, grace notes stand as far
 * before their note as they did. A beginning moves by half a step at most (a whole step before the first point); notes nearer
 * to each other than that may come together. A line on the grid stays as it is.
 *
 * @throws ReedplateError `OPTION_UNKNOWN` for a grid that does not divide the felt beat of the metre,
 * `NUMBER_RANGE` for a wrong swing
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { quantiseLine } from '@reedplate/interchange';
 *
 * const take = makeLine([{ start: 13, duration: 610, pitch: 67 }, { start: 655, duration: 270, pitch: 70 }]);
 * quantiseLine(take, { grid: ['1/8', '1/8t'] }).notes;
 * // => [{ start: 0, duration: 640, pitch: 67 }, { start: 640, duration: 320, pitch: 70 }]
 * quantiseLine(take, { grid: '1/8', swing: 2 }).notes[1]; // => { start: 480, duration: 480, pitch: 70 }
 * quantiseLine(makeLine([], { metre: '12/8' }), { grid: '1/4' }); // throws OPTION_UNKNOWN
 * ```
 */
export function quantiseLine(line: Line, options: QuantiseOptions = {}): Line {
  const { grid = '1/16', swing = 1 } = requireOptions(options, QUANTISE_OPTIONS, 'quantiseLine');
  requireLine(line);
  const steps = stepsOf(grid, line);
  requirePositive(swing, { max: LARGEST_SWING, what: 'a ratio of eighths' });
  const { notes, ...head } = swing === 1 ? line : removeSwing(line, { ratio: swing });
  const targets = graceTargets(notes);
  const counted = notes.filter((_, at) => targets[at] === undefined);
  const grids = layGrid(counted, steps, {
    origin: line.pickup,
    beatTicks: parseMetre(line.metre).beatTicks,
  });
  const next = nextStarts(counted);
  const graces = notes.flatMap((note, at) => moveGrace(note, targets[at], grids));
  return makeLine([...counted.map((note, at) => layNote(note, next[at], grids)), ...graces], head);
}

/** A grace note is on no grid: it moves with the note that it leads to. */
function moveGrace(
  note: TimedNote,
  target: number | undefined,
  { snap }: BeatGrids,
): readonly TimedNote[] {
  if (target === undefined) return [];
  return [{ ...note, start: Math.max(0, note.start + snap(target) - target) }];
}

/** An end that is next to the beginning of another note meets it, wherever both are laid. */
function layNote(
  note: TimedNote,
  next: number | undefined,
  { snap, pointAfter, finest }: BeatGrids,
): TimedNote {
  const end = note.start + note.duration;
  const meets = next !== undefined && Math.abs(next - end) < finest / 2;
  const from = snap(note.start);
  const to = Math.max(snap(meets ? next : end), pointAfter(from));
  return retimeNote(note, { start: from, duration: to - from });
}

/** For each note when the next begins that does not begin with it. */
function nextStarts(notes: readonly TimedNote[]): readonly (number | undefined)[] {
  const next: (number | undefined)[] = [];
  for (let at = notes.length - 1; at >= 0; at -= 1) {
    const after = notes[at + 1]?.start;
    next[at] = after === notes[at]?.start ? next[at + 1] : after;
  }
  return next;
}

function stepsOf(grid: QuantiseOptions['grid'], { metre }: Line): readonly number[] {
  const { beatTicks } = parseMetre(metre);
  const ids: readonly unknown[] = Array.isArray(grid) ? grid : [grid];
  const fitting = GRID_IDS.filter((id) => beatTicks % GRIDS[id] === 0);
  if (ids.length === 0) {
    throw new ReedplateError({ code: 'LIST_EMPTY', value: grid, expected: 'a grid at least' });
  }
  return ids.map((id) => {
    const known = requireOneOf(id, fitting, { what: `a grid that divides the beat of ${metre}` });
    return GRIDS[known];
  });
}
