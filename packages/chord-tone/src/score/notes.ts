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
import { type ChordTable, SILENCE } from './chord-table.js';
import type { ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import { metreOf } from './place-notes.js';
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

/** The spellings of a chart. */
export function spellingsOf({ tables, key }: ScoringGrid): Spellings {
  const spellings = new Map<ChordTable, Spelling>([[SILENCE, spellingOf(SILENCE, key)]]);
  for (const table of tables) spellings.set(table, spellingOf(table, key));
  return spellings;
}

/** The judged parts as the score tells them, spelled and placed. */
export function noteScores(
  judged: readonly Judged[],
  grid: ScoringGrid,
  spellings: Spellings,
): readonly NoteScore[] {
  return Object.freeze(judged.map((one) => noteScore(one, grid, spellings)));
}

function noteScore(
  { part, class: noteClass, credit, weight, resolvesTo }: Judged,
  grid: ScoringGrid,
  spellings: Spellings,
): NoteScore {
  const { pickup, barTicks, beatTicks } = grid;
  const { note, start, end, held, table, change, clock } = part;
  const { chord, nameOf, degrees } = spellings.get(table) as Spelling;
  const fromBarOne = start - pickup;
  const bar = Math.floor(fromBarOne / barTicks);
  return Object.freeze({
    index: note.index,
    held,
    bar: bar + 1,
    beat: (fromBarOne - bar * barTicks) / beatTicks + 1,
    start,
    duration: end - start,
    pitch: note.pitch,
    name: nameOf(note.pitch),
    chord,
    degree: degrees[note.pitch % 12] as ScaleDegree | null,
    push: change !== clock,
    class: noteClass,
    credit,
    weight,
    metre: metreOf(part, grid),
    resolvesTo: resolvesTo?.index ?? null,
  });
}
