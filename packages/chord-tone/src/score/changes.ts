import type { ChordTable } from './chord-table.js';
import type { Change, ScoringGrid } from './grid.js';
import { type Judged, lengthOf, pitchOf } from './judge.js';
import { NOTE_CLASSES, type NoteClass } from './note-class.js';
import type { ChangeScore } from './score-types.js';
import type { ScoreWeights } from './weights.js';

/** Shortest note heard as landing, in felt beats: less is a late release. Design choice. */
const SHORTEST_LANDING = 1 / 8;

/** What happened at each change of a judged line. */
export function scoreChanges(
  judged: Judged,
  grid: ScoringGrid,
  weights: ScoreWeights,
): readonly ChangeScore[] {
  const { landings, heard } = gatherByChange(judged, grid, weights);
  const { changes } = grid;
  const scores: ChangeScore[] = [];
  // A blues goes round: what comes before its first chord is its last.
  let before = (changes[changes.length - 1] as Change).table;
  for (let index = 1; index < changes.length; index += 1) {
    const change = changes[index] as Change;
    const landing = landings[index] as number;
    if (change.table.chord !== null) {
      const chord = change.table.chord.symbol;
      const pitchClasses = heard[index] as number;
      scores.push(scoreChange({ change, chord, before, landing, pitchClasses, judged, weights }));
    }
    before = change.table;
  }
  return Object.freeze(scores);
}

/** What is heard while each change lasts. */
interface HeardByChange {
  /** The piece that sounds at the change; −1 for a rest. */
  readonly landings: Int32Array;
  /** One bit for each pitch class. */
  readonly heard: Uint16Array;
}

function gatherByChange(
  { runs, pieces, change, ...judged }: Judged,
  { changes, starts, beatTicks }: ScoringGrid,
  weights: ScoreWeights,
): HeardByChange {
  const landings = new Int32Array(changes.length).fill(-1);
  const heard = new Uint16Array(changes.length);
  const worthOf = NOTE_CLASSES.map((name) => weights.landing[name]);
  const landingOf = (piece: number): number => worthOf[judged.class[piece] as number] as number;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const at = change[piece] as number;
    heard[at] = (heard[at] as number) | (1 << (pitchOf(runs, pieces, piece) % 12));
    if (lengthOf(pieces, piece) < SHORTEST_LANDING * beatTicks) continue;
    const start = pieces.start[piece] as number;
    if (start > (starts[at] as number) + weights.landWithin * beatTicks) continue;
    const first = landings[at] as number;
    // A push is there before a note held over the change, though struck after it. Of notes struck
    // together the best counts: a chord lands if one of its notes does.
    const lead = first < 0 ? Number.POSITIVE_INFINITY : (pieces.start[first] as number);
    const isBetter = start < lead || (start === lead && landingOf(piece) > landingOf(first));
    if (isBetter) landings[at] = piece;
  }
  return { landings, heard };
}

interface ChangeParts {
  readonly change: Change;
  readonly chord: string;
  readonly before: ChordTable;
  /** The piece that sounds at the change; −1 for a rest. */
  readonly landing: number;
  /** Those heard while it lasts, one bit each. */
  readonly pitchClasses: number;
  readonly judged: Judged;
  readonly weights: ScoreWeights;
}

function scoreChange({
  change,
  chord,
  landing,
  before,
  pitchClasses,
  judged,
  weights,
}: ChangeParts): ChangeScore {
  const noteClass =
    landing < 0 ? null : (NOTE_CLASSES[judged.class[landing] as number] as NoteClass);
  const run = landing < 0 ? -1 : (judged.pieces.run[landing] as number);
  return Object.freeze({
    bar: change.bar,
    beat: change.beat,
    chord,
    numeral: change.numeral,
    index: run < 0 ? null : (judged.runs.index[run] as number),
    class: noteClass,
    landing: noteClass === null ? null : weights.landing[noteClass],
    shown: noteClass === 'root' || isShown(change.table, before, pitchClasses),
  });
}

function isShown({ tone }: ChordTable, before: ChordTable, heard: number): boolean | null {
  if (before.chord === null || heard === 0) return null;
  let fresh = 0;
  for (let pitchClass = 0; pitchClass < 12; pitchClass += 1) {
    if (tone[pitchClass] === 1 && before.tone[pitchClass] === 0) fresh |= 1 << pitchClass;
  }
  return fresh === 0 ? null : (fresh & heard) !== 0;
}
