import {
  type NoteNameWithOctave,
  SCALE_DEGREES,
  type ScaleDegree,
  spell,
  toPitchClass,
} from '@reedplate/pitch';
import { spelledPitch } from '../spelled-pitch.js';
import type { ChordTable } from './chord-table.js';
import type { ScoringGrid } from './grid.js';
import { type Judged, lengthOf, pitchOf } from './judge.js';
import { strengthOf } from './measures.js';
import { NOTE_CLASSES, type NoteClass } from './note-class.js';
import type { NoteScore } from './score-types.js';

/**
 * The judged pieces as objects, spelled and placed.
 *
 * @param spellings one for each chord table
 */
export function noteScores(
  judged: Judged,
  grid: ScoringGrid,
  spellings: readonly Spellings[],
  swing: number,
): readonly NoteScore[] {
  const plain = spellingsOf(undefined, grid);
  const notes: NoteScore[] = [];
  for (let piece = 0; piece < judged.pieces.count; piece += 1) {
    const table = grid.changes[judged.change[piece] as number]?.table ?? -1;
    notes.push(noteScore(piece, judged, grid, spellings[table] ?? plain, swing));
  }
  return Object.freeze(notes);
}

/** Names and degrees of all pitches over one chord. */
export interface Spellings {
  readonly chord: string | null;
  readonly names: readonly NoteNameWithOctave[];
  /** By pitch class. */
  readonly degrees: readonly (ScaleDegree | null)[];
}

const PITCHES = Array.from({ length: 128 }, (_, pitch) => pitch);

/** Spells every pitch by a chord where it is a tone of it, else by the key. */
export function spellingsOf(table: ChordTable | undefined, { key }: ScoringGrid): Spellings {
  const tones = table?.chord.tones ?? [];
  const root = tones[0]?.pitchClass;
  return {
    chord: table?.chord.symbol ?? null,
    names: PITCHES.map((pitch) => {
      const pitchClass = toPitchClass(pitch);
      const tone = tones.find((other) => other.pitchClass === pitchClass);
      return spelledPitch(pitch, tone?.name ?? spell(pitchClass, key));
    }),
    degrees: PITCHES.slice(0, 12).map((pitchClass) =>
      root === undefined ? null : (SCALE_DEGREES[toPitchClass(pitchClass - root)] as ScaleDegree),
    ),
  };
}

function noteScore(
  piece: number,
  judged: Judged,
  grid: ScoringGrid,
  { chord, names, degrees }: Spellings,
  swing: number,
): NoteScore {
  const { runs, pieces, resolvesTo } = judged;
  const run = pieces.run[piece] as number;
  const pitch = pitchOf(runs, pieces, piece);
  const start = pieces.start[piece] as number;
  const target = resolvesTo[piece] as number;
  const fromBarOne = start - grid.pickup;
  const bar = Math.floor(fromBarOne / grid.barTicks);
  return Object.freeze({
    index: runs.index[run] as number,
    held: pieces.first[run] !== piece,
    bar: bar + 1,
    beat: (fromBarOne - bar * grid.barTicks) / grid.beatTicks + 1,
    start,
    duration: lengthOf(pieces, piece),
    pitch,
    name: names[pitch] as NoteNameWithOctave,
    chord,
    degree: degrees[pitch % 12] as ScaleDegree | null,
    push: judged.change[piece] !== pieces.change[piece],
    class: NOTE_CLASSES[judged.class[piece] as number] as NoteClass,
    credit: judged.credit[piece] as number,
    weight: judged.weight[piece] as number,
    metre: strengthOf(start, grid, swing),
    resolvesTo: target < 0 ? null : (runs.index[target] as number),
  });
}
