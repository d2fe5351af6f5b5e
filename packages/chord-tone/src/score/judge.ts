import type { ChordTable } from './chord-table.js';
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
  /** The change each piece belongs to: the one it sounds in or, for a push, the coming one. */
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
  const classes = new Uint8Array(pieces.count);
  const credit = new Float64Array(pieces.count);
  const weight = new Float64Array(pieces.count);
  const credits = NOTE_CLASSES.map((name) => weights.credit[name]);
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const run = pieces.run[piece] as number;
    const { table } = grid.changes[change[piece] as number] as Change;
    const beats = lengthOf(pieces, piece) / grid.beatTicks;
    const target = resolvesTo[piece] as number;
    const noteClass = classOf(run, target, table, runs, beats < weights.struck);
    const worth = credits[noteClass] as number;
    const isStruck = pieces.first[run] === piece;
    classes[piece] = noteClass;
    const isJudged = noteClass !== CLASS.unjudged;
    credit[piece] = target >= 0 && isJudged ? Math.max(worth, weights.resolvedCredit) : worth;
    weight[piece] = isJudged ? beats + (isStruck ? weights.struck : 0) : 0;
  }
  return { runs, pieces, change, resolvesTo, next, class: classes, credit, weight };
}

/** A note struck just before a change goes to the coming chord where it is a tone of that alone. */
function assignChanges(
  runs: Runs,
  pieces: Pieces,
  { changes }: ScoringGrid,
): { readonly change: Int32Array; readonly isTone: Uint8Array } {
  const change = pieces.change.slice(0, pieces.count);
  const isTone = new Uint8Array(pieces.count);
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const pitchClass = pitchOf(runs, pieces, piece) % 12;
    const coming = pieces.coming[piece] as number;
    const here = toneAt(changes, change[piece] as number, pitchClass);
    const there = coming === 0 ? here : toneAt(changes, coming, pitchClass);
    if (there > here) change[piece] = coming;
    isTone[piece] = here === 1 || there === 1 ? 1 : 0;
  }
  return { change, isTone };
}

function toneAt(changes: readonly Change[], change: number, pitchClass: number): number {
  return (changes[change] as Change).table.tone[pitchClass] as number;
}

function classOf(
  run: number,
  target: number,
  { resting, tone, blue }: ChordTable,
  runs: Runs,
  isBrief: boolean,
): ClassIndex {
  const pitch = runs.pitch[run] as number;
  const atRest = resting[pitch % 12] as ClassIndex;
  if (tone[pitch % 12] !== 0 || atRest === CLASS.blue) return atRest;
  if (target < 0) return atRest === CLASS.clash && isBrief ? CLASS.unresolved : atRest;
  if (blue[pitch % 12]) return CLASS.blue;
  const before = run === 0 ? undefined : runs.pitch[run - 1];
  return resolvedFigure(before, pitch, runs.pitch[target] as number);
}

/** MIDI number of a piece. */
export function pitchOf(runs: Runs, pieces: Pieces, piece: number): number {
  return runs.pitch[pieces.run[piece] as number] as number;
}

/** Ticks of a piece. */
export function lengthOf(pieces: Pieces, piece: number): number {
  return (pieces.end[piece] as number) - (pieces.start[piece] as number);
}
