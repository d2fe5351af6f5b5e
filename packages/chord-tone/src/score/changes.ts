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
  const heard = gatherByChange(judged, grid, weights);
  const scores: ChangeScore[] = [];
  grid.changes.forEach((change, index) => {
    const table = grid.tables[change.table];
    if (table === undefined) return;
    // A blues goes round: what comes before its first chord is its last.
    const before = grid.tables[grid.changes.at(index - 1)?.table ?? -1];
    scores.push(
      scoreChange({ change, table, before, heard: heard[index] as Heard, judged, weights }),
    );
  });
  return Object.freeze(scores);
}

/** What is heard while a chord lasts. */
interface Heard {
  /** The piece that sounds at the change; −1 for a rest. */
  landing: number;
  /** One bit for each pitch class. */
  pitchClasses: number;
}

function gatherByChange(
  { runs, pieces, change, ...judged }: Judged,
  { changes, beatTicks }: ScoringGrid,
  weights: ScoreWeights,
): readonly Heard[] {
  const heard = changes.map((): Heard => ({ landing: -1, pitchClasses: 0 }));
  const landingOf = (piece: number): number =>
    weights.landing[NOTE_CLASSES[judged.class[piece] as number] as NoteClass];
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const at = change[piece] as number;
    const entry = heard[at];
    if (entry === undefined) continue;
    entry.pitchClasses |= 1 << (pitchOf(runs, pieces, piece) % 12);
    if (lengthOf(pieces, piece) < SHORTEST_LANDING * beatTicks) continue;
    const start = pieces.start[piece] as number;
    if (start > (changes[at] as Change).start + weights.landWithin * beatTicks) continue;
    const isFirst = entry.landing < 0;
    // Of notes struck together the best counts: a chord lands if one of its notes does.
    const isBetter =
      !isFirst &&
      pieces.start[entry.landing] === start &&
      landingOf(piece) > landingOf(entry.landing);
    if (isFirst || isBetter) entry.landing = piece;
  }
  return heard;
}

interface ChangeParts {
  readonly change: Change;
  readonly table: ChordTable;
  readonly before: ChordTable | undefined;
  readonly heard: Heard;
  readonly judged: Judged;
  readonly weights: ScoreWeights;
}

function scoreChange({ change, table, before, heard, judged, weights }: ChangeParts): ChangeScore {
  const { landing } = heard;
  const noteClass =
    landing < 0 ? null : (NOTE_CLASSES[judged.class[landing] as number] as NoteClass);
  const run = landing < 0 ? -1 : (judged.pieces.run[landing] as number);
  return Object.freeze({
    bar: change.bar,
    beat: change.beat,
    chord: table.chord.symbol,
    numeral: change.numeral,
    index: run < 0 ? null : (judged.runs.index[run] as number),
    class: noteClass,
    landing: noteClass === null ? null : weights.landing[noteClass],
    shown: noteClass === 'root' || isShown(table, before, heard.pitchClasses),
  });
}

function isShown(
  { tone }: ChordTable,
  before: ChordTable | undefined,
  heard: number,
): boolean | null {
  if (before === undefined || heard === 0) return null;
  const fresh = tone.reduce(
    (bits, isTone, pitchClass) =>
      isTone === 1 && before.tone[pitchClass] === 0 ? bits | (1 << pitchClass) : bits,
    0,
  );
  return fresh === 0 ? null : (fresh & heard) !== 0;
}
