import type { ChordTable } from './chord-table.js';
import type { Change, ScoringGrid } from './grid.js';
import type { Placed } from './place-notes.js';
import type { ScoreWeights } from './weights.js';

/** What sounds of a note between two changes, whatever the chords are. */
export interface Cut {
  readonly note: Placed;
  readonly start: number;
  readonly end: number;
  /** Whether the note was struck over an earlier chord and is held into this one. */
  readonly held: boolean;
  /** Whether the note ends here. */
  readonly last: boolean;
  /** The change it sounds in by the clock. */
  readonly clock: number;
  /** Whether it is struck so shortly before the next change that it may belong to it. */
  readonly mayPush: boolean;
}

/** The part of a note that sounds over one chord. */
export interface Part extends Cut {
  /** The change it belongs to: that by the clock, or the coming one it is struck before. */
  readonly change: number;
  /** The chord it belongs to. */
  readonly table: ChordTable;
  /** Whether it is a tone of the chord that sounds, or of the coming one. */
  readonly tone: boolean;
}

/** What cutting looks at: chords in time, whoever's they are. */
export type Chords = Pick<ScoringGrid, 'changes' | 'end' | 'pickup' | 'beatTicks'>;

/** Cuts notes, in their order, where the chord changes; what lies outside the chart falls away. */
export function cutNotes(
  notes: readonly Placed[],
  chords: Chords,
  { pushWithin }: Pick<ScoreWeights, 'pushWithin'>,
): readonly Cut[] {
  const { changes, end: chartEnd } = chords;
  const cuts: Cut[] = [];
  let at = 0;
  for (const note of notes) {
    while (at + 1 < changes.length && (changes[at + 1] as Change).start <= note.start) at += 1;
    const end = Math.min(note.end, chartEnd);
    if (end <= 0) continue;
    let { start } = note;
    for (let clock = at; start < end; clock += 1) {
      const stop = Math.min(end, changes[clock + 1]?.start ?? chartEnd);
      const held = clock > at;
      const mayPush = !held && isPush(note, clock, chords, pushWithin);
      cuts.push({ note, start, end: stop, held, last: stop === end, clock, mayPush });
      start = stop;
    }
  }
  return cuts;
}

function isPush(
  { start, beats }: Placed,
  clock: number,
  { changes, pickup, beatTicks }: Chords,
  pushWithin: number,
): boolean {
  const next = changes[clock + 1];
  if (next === undefined || next.start - start > beatTicks) return false;
  return (next.start - pickup) / beatTicks - beats <= pushWithin + 1e-6;
}

/** A note struck just before a change belongs to it where it is a tone of that chord alone. */
export function partOver(cut: Cut, changes: readonly Change[]): Part {
  const { note, start, end, held, last, clock, mayPush } = cut;
  const pitchClass = note.pitch % 12;
  const table = (changes[clock] as Change).table;
  const coming = mayPush ? (changes[clock + 1] as Change).table : table;
  const here = table.tone[pitchClass] as number;
  const there = coming.tone[pitchClass] as number;
  const tone = here === 1 || there === 1;
  return there > here
    ? { note, start, end, held, last, clock, mayPush, tone, change: clock + 1, table: coming }
    : { note, start, end, held, last, clock, mayPush, tone, change: clock, table };
}
