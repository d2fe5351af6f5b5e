import { resolvedFigure } from './figure.js';
import type { Change, ScoringGrid } from './grid.js';
import { CLASS, type ClassIndex, NOTE_CLASSES } from './note-class.js';
import type { Pieces } from './pieces.js';
import { findResolutions } from './resolve.js';
import type { Runs } from './runs.js';
import type { ScoreWeights } from './weights.js';

/** What each piece was judged to be, as columns beside those of the pieces. */
export interface Judged {
  readonly runs: Runs;
  readonly pieces: Pieces;
  /** The change each piece belongs to: the one it sounds in or, for a push, the coming one; −1 for none. */
  readonly change: Int32Array;
  /** The run each piece resolves to; −1 for none. */
  readonly resolvesTo: Int32Array;
  /** For each run the lowest one of the next onset; −1 for the last. */
  readonly next: Int32Array;
  readonly class: Uint8Array;
  readonly credit: Float64Array;
  readonly weight: Float64Array;
}

/** Judges every piece: its change, what it resolves to, its class, credit and weight. */
export function judgePieces(
  runs: Runs,
  pieces: Pieces,
  grid: ScoringGrid,
  weights: ScoreWeights,
): Judged {
  const { change, isTone } = assignChanges(runs, pieces, grid);
  const within = weights.resolveWithin * grid.beatTicks;
  const { resolvesTo, next } = findResolutions(runs, pieces, isTone, within);
  const judged: Judged = {
    runs,
    pieces,
    change,
    resolvesTo,
    next,
    class: new Uint8Array(pieces.count),
    credit: new Float64Array(pieces.count),
    weight: new Float64Array(pieces.count),
  };
  const credits = NOTE_CLASSES.map((name) => weights.credit[name]);
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const beats = lengthOf(pieces, piece) / grid.beatTicks;
    const noteClass = classOf(piece, beats < weights.struck, judged, grid);
    const credit = credits[noteClass] as number;
    const isStruck = pieces.first[pieces.run[piece] as number] === piece;
    const isResolved = (resolvesTo[piece] as number) >= 0;
    judged.class[piece] = noteClass;
    judged.credit[piece] = isResolved ? Math.max(credit, weights.resolvedCredit) : credit;
    judged.weight[piece] =
      noteClass === CLASS.unjudged ? 0 : beats + (isStruck ? weights.struck : 0);
  }
  return judged;
}

/** A note struck just before a change goes to the coming chord where it is a tone of that alone. */
function assignChanges(
  runs: Runs,
  pieces: Pieces,
  { changes, tables }: ScoringGrid,
): { readonly change: Int32Array; readonly isTone: Uint8Array } {
  const change = pieces.change.slice(0, pieces.count);
  const isTone = new Uint8Array(pieces.count);
  const toneAt = (index: number, pitchClass: number): number =>
    tables[changes[index]?.table ?? -1]?.tone[pitchClass] ?? -1;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const pitchClass = pitchOf(runs, pieces, piece) % 12;
    const here = toneAt(change[piece] as number, pitchClass);
    const coming = pieces.coming[piece] as number;
    const there = coming < 0 ? -1 : toneAt(coming, pitchClass);
    if (there > here) change[piece] = coming;
    isTone[piece] = Math.max(here, there) === 1 ? 1 : 0;
  }
  return { change, isTone };
}

function classOf(
  piece: number,
  isBrief: boolean,
  { runs, pieces, change, resolvesTo }: Judged,
  { changes, tables }: ScoringGrid,
): ClassIndex {
  const table = tables[(changes[change[piece] as number] as Change | undefined)?.table ?? -1];
  if (table === undefined) return CLASS.unjudged;
  const pitch = pitchOf(runs, pieces, piece);
  const resting = table.resting[pitch % 12] as ClassIndex;
  if (table.tone[pitch % 12] === 1) return resting;
  const target = resolvesTo[piece] as number;
  const isResolved = target >= 0;
  if (resting === CLASS.blue || (isResolved && table.blue[pitch % 12])) return CLASS.blue;
  if (isResolved) {
    const run = pieces.run[piece] as number;
    const before = run === 0 ? undefined : runs.pitch[run - 1];
    return resolvedFigure(before, pitch, runs.pitch[target] as number);
  }
  return resting === CLASS.clash && isBrief ? CLASS.unresolved : resting;
}

/** MIDI number of a piece. */
export function pitchOf(runs: Runs, pieces: Pieces, piece: number): number {
  return runs.pitch[pieces.run[piece] as number] as number;
}

/** Ticks of a piece. */
export function lengthOf(pieces: Pieces, piece: number): number {
  return (pieces.end[piece] as number) - (pieces.start[piece] as number);
}
