import type { TimedNote } from '@reedplate/line';
import { ReedplateError } from '@reedplate/pitch';
import type { WarningList } from '../warning.js';
import { type GraceGroup, layGraces } from './lay-graces.js';
import type { Measure, MeasureNote, PlayedAs } from './measure.js';
import { playedOver } from './played.js';

/** A chord symbol in time. */
export interface ChordMark {
  readonly start: number;
  readonly text: string;
}

/** A tempo in time. */
export interface TempoMark {
  readonly start: number;
  /** Quarter notes a minute. */
  readonly quarters: number;
}

/** Measures laid end to end. */
export interface LaidMeasures {
  readonly notes: readonly TimedNote[];
  readonly chords: readonly ChordMark[];
  readonly tempos: readonly TempoMark[];
  /** Ticks before the first whole bar; 0 where the first measure is one. */
  readonly pickup: number;
  readonly end: number;
}

/** Parts of a tick that a sum of lengths may be off: rounding in binary, not music. */
const LARGEST_ROUNDING = 1e-3;

/** Most notes played out of repeats: hours of music. */
const MOST_NOTES = 500_000;

/**
 * Lays measures end to end in the order they are played; ties become one note.
 *
 * @throws ReedplateError `FILE_TOO_LARGE`
 */
export function layMeasures(
  measures: readonly Measure[],
  order: readonly number[],
  { barTicks, warnings }: { readonly barTicks: number; readonly warnings: WarningList },
): LaidMeasures {
  const played = order.map((at) => measures[at] as Measure);
  const count = played.reduce(
    (sum, { notes, graces = [] }) => sum + notes.length + graces.length,
    0,
  );
  if (count > MOST_NOTES) {
    const expected = `at most ${MOST_NOTES} notes with its repeats`;
    throw new ReedplateError({ code: 'FILE_TOO_LARGE', value: 'this piece', expected });
  }
  const pickup = pickupOf(played, barTicks);
  const tied = makeTies(warnings);
  const chords: ChordMark[] = [];
  const tempos: TempoMark[] = [];
  const graces: GraceGroup[] = [];
  let start = 0;
  for (const measure of played) {
    // Voices come one after another; a tie is met in the order of time.
    for (const note of inOrder(measure.notes)) tied.add(note, start, measure);
    for (const { offset, text } of measure.chords) {
      chords.push({ start: Math.round(start + offset), text });
    }
    for (const { offset, quarters } of measure.tempos ?? []) {
      tempos.push({ start: Math.round(start + offset), quarters });
    }
    for (const { offset, notes } of measure.graces ?? []) {
      graces.push({ target: Math.round(start + offset), notes });
    }
    start += measure.length;
  }
  warnOffGrid(played, { pickup, barTicks, warnings });
  const counted = tied.all();
  const notes = [...counted, ...layGraces(graces, counted)];
  return { notes, chords, tempos, pickup, end: Math.round(start) };
}

function inOrder(notes: readonly MeasureNote[]): readonly MeasureNote[] {
  return [...notes].sort((a, b) => a.offset - b.offset);
}

function pickupOf([first, second]: readonly Measure[], barTicks: number): number {
  const length = Math.round(first?.length ?? 0);
  // A short measure that closes a repeat or stands alone is no pickup.
  const isPickup = second !== undefined && length < barTicks && first?.closes === 0;
  return isPickup ? length : 0;
}

interface Ties {
  readonly add: (note: MeasureNote, measureStart: number, measure: Measure) => void;
  readonly all: () => readonly TimedNote[];
}

/** A note with all that is tied to it; its beginning says how it is played. */
interface TiedNote extends Pick<TimedNote, 'start' | 'duration' | 'pitch'> {
  readonly played: PlayedAs | undefined;
}

/** Joins each tied note to the next of its pitch that begins where it ends. */
function makeTies(warnings: WarningList): Ties {
  const notes: TiedNote[] = [];
  const open = new Map<number, { readonly at: number; readonly end: number }>();
  return {
    add: ({ offset, duration, pitch, tied, played }, measureStart, { where }) => {
      const start = Math.round(measureStart + offset);
      const end = Math.round(measureStart + offset + duration);
      if (end <= start) {
        warnings.add('note-empty', where);
        return;
      }
      const before = open.get(pitch);
      open.delete(pitch);
      const isContinued = before !== undefined && before.end === start;
      if (before !== undefined && !isContinued) warnings.add('tie-open', where);
      const at = isContinued ? before.at : notes.length;
      const first = isContinued ? (notes[at] as TiedNote) : { start, played };
      notes[at] = { ...first, duration: end - first.start, pitch };
      if (tied) open.set(pitch, { at, end });
    },
    all: () => {
      for (const _ of open.values()) warnings.add('tie-open');
      return notes.map(({ played, ...note }) => ({
        ...note,
        ...playedOver(played, note.duration),
      }));
    },
  };
}

/**
 * Says where measures, played one after another, leave the grid of their metre. Around a repeat a
 * bar may be split in two; the last measure may be short.
 */
function warnOffGrid(
  played: readonly Measure[],
  grid: { readonly pickup: number; readonly barTicks: number; readonly warnings: WarningList },
): void {
  let inBar = grid.pickup === 0 ? 0 : grid.barTicks - grid.pickup;
  for (const measure of played.slice(0, -1)) {
    inBar += measure.length;
    const isSplit = inBar < grid.barTicks - LARGEST_ROUNDING && measure.closes > 0;
    if (isSplit) continue;
    const isWhole = Math.abs(inBar - grid.barTicks) < LARGEST_ROUNDING;
    if (!isWhole && measure.length > 0) grid.warnings.add('bars-off-grid', measure.where);
    inBar = 0;
  }
}
