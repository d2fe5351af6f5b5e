import {
  type Key,
  type NoteNameWithOctave,
  SCALE_DEGREES,
  type ScaleDegree,
  spell,
  toPitchClass,
} from '@reedplate/pitch';
import { spelledPitch } from '../spelled-pitch.js';
import { toneByPitchClass } from '../target.js';
import { type ChordTable, type CompiledChord, SILENCE } from './chord-table.js';
import type { ScoringGrid } from './grid.js';
import { type Judged, lengthOf } from './judge.js';
import { NOTE_CLASSES, type NoteClass } from './note-class.js';
import type { NoteScore } from './score-types.js';

/** Names and degrees of all pitches over one chord. */
export interface Spelling {
  /** Its symbol; null where no chord sounds. */
  readonly chord: string | null;
  readonly nameOf: (pitch: number) => NoteNameWithOctave;
  /** By pitch class. */
  readonly degrees: readonly (ScaleDegree | null)[];
}

/** Spells pitches by a chord where they are tones of it, else by the key; each name made once. */
export function spellingOf({ chord }: ChordTable, key: Key): Spelling {
  const toneAt = chord === null ? [] : toneByPitchClass(chord);
  const root = chord?.tones[0]?.pitchClass;
  const names: NoteNameWithOctave[] = [];
  const makeName = (pitch: number): NoteNameWithOctave => {
    const pitchClass = toPitchClass(pitch);
    const name = spelledPitch(pitch, toneAt[pitchClass]?.name ?? spell(pitchClass, key));
    names[pitch] = name;
    return name;
  };
  return {
    chord: chord?.symbol ?? null,
    nameOf: (pitch) => names[pitch] ?? makeName(pitch),
    degrees: SCALE_DEGREES.map((_, pitchClass) =>
      root === undefined ? null : (SCALE_DEGREES[toPitchClass(pitchClass - root)] as ScaleDegree),
    ),
  };
}

/** How each chord of a chart spells, and the times without one. */
export type Spellings = ReadonlyMap<ChordTable, Spelling>;

/** Spellings made before: a table belongs to one key. */
const KNOWN = new WeakMap<CompiledChord, Spelling>();

/** The spellings of a chart. */
export function spellingsOf({ tables, key }: ScoringGrid): Spellings {
  const spellings = new Map<ChordTable, Spelling>([[SILENCE, spellingOf(SILENCE, key)]]);
  for (const table of tables) {
    const spelling = KNOWN.get(table) ?? spellingOf(table, key);
    KNOWN.set(table, spelling);
    spellings.set(table, spelling);
  }
  return spellings;
}

/** The judged pieces as objects, spelled and placed. */
export function noteScores(
  judged: Judged,
  grid: ScoringGrid,
  spellings: Spellings,
): readonly NoteScore[] {
  const byChange = grid.changes.map(({ table }) => spellings.get(table) as Spelling);
  const notes: NoteScore[] = [];
  for (let piece = 0; piece < judged.pieces.count; piece += 1) {
    const spelling = byChange[judged.change[piece] as number] as Spelling;
    notes.push(noteScore(piece, judged, grid, spelling));
  }
  return Object.freeze(notes);
}

function noteScore(
  piece: number,
  judged: Judged,
  { pickup, barTicks, beatTicks }: ScoringGrid,
  { chord, nameOf, degrees }: Spelling,
): NoteScore {
  const { runs, pieces } = judged;
  const run = pieces.run[piece] as number;
  const pitch = runs.pitch[run] as number;
  const start = pieces.start[piece] as number;
  const target = judged.resolvesTo[piece] as number;
  const fromBarOne = start - pickup;
  const bar = Math.floor(fromBarOne / barTicks);
  return Object.freeze({
    index: runs.index[run] as number,
    held: pieces.first[run] !== piece,
    bar: bar + 1,
    beat: (fromBarOne - bar * barTicks) / beatTicks + 1,
    start,
    duration: lengthOf(pieces, piece),
    pitch,
    name: nameOf(pitch),
    chord,
    degree: degrees[pitch % 12] as ScaleDegree | null,
    push: judged.change[piece] !== pieces.change[piece],
    class: NOTE_CLASSES[judged.class[piece] as number] as NoteClass,
    credit: judged.credit[piece] as number,
    weight: judged.weight[piece] as number,
    metre: pieces.metre[piece] as number,
    resolvesTo: target < 0 ? null : (runs.index[target] as number),
  });
}
