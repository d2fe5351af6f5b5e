import type { ChordTable } from './chord-table.js';
import { STEP } from './figure.js';
import type { ScoringGrid } from './grid.js';
import { type Judged, pitchOf } from './judge.js';
import { CLASS, NOTE_CLASSES } from './note-class.js';
import type { Pieces } from './pieces.js';
import type { ScoreWeights } from './weights.js';

const PITCHES = 128;

/** What every pitch is worth at one kind of place in a chart. */
interface Place {
  /** 1 for a chord tone, else 0. */
  readonly tone: Float64Array;
  /** Credit where the note does not resolve. */
  readonly resting: Float64Array;
  /** How likely a pitch drawn from the line stands a step away and is a chord tone. */
  readonly stepAway: Float64Array;
}

/**
 * The fit that the notes of a line would have on average in any order: every place is given a
 * pitch drawn from the line, as likely as its weight there, and so is the note after it. Exact
 * for that draw, without a random number; null where nothing is judged.
 */
export function chanceFit(judged: Judged, grid: ScoringGrid, weights: ScoreWeights): number | null {
  const { pieces, weight } = judged;
  const drawn = pitchShares(judged);
  const placeAt = placeReader(drawn, grid, weights);
  const means = new Map<number, number>();
  const within = weights.resolveWithin * grid.beatTicks;
  let sum = 0;
  let total = 0;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const share = weight[piece] as number;
    if (share === 0) continue;
    const here = kindOf(piece, pieces, grid);
    const after = kindAfter(piece, judged, grid, within);
    const id = here * KINDS + after + 1;
    let mean = means.get(id);
    if (mean === undefined) {
      const next = after < 0 ? undefined : placeAt(after);
      mean = meanCredit(placeAt(here), next, drawn, weights.resolvedCredit);
      means.set(id, mean);
    }
    sum += share * mean;
    total += share;
  }
  return total === 0 ? null : sum / total;
}

/** More kinds of place than any chart has, to make one number of two. */
const KINDS = 2 ** 26;

/** Share of the weight that each pitch has in the line. */
function pitchShares({ runs, pieces, weight }: Judged): Float64Array {
  const shares = new Float64Array(PITCHES);
  let total = 0;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const share = weight[piece] as number;
    const pitch = pitchOf(runs, pieces, piece);
    shares[pitch] = (shares[pitch] as number) + share;
    total += share;
  }
  return total === 0 ? shares : shares.map((share) => share / total);
}

/** The pair of chords a note may belong to, as one number: that of the clock and a coming one. */
function kindOf(piece: number, pieces: Pieces, { changes, tables }: ScoringGrid): number {
  const here = changes[pieces.change[piece] as number]?.table ?? -1;
  const coming = changes[pieces.coming[piece] as number]?.table ?? -1;
  return (here + 1) * (tables.length + 1) + coming + 1;
}

/** The same of the note struck next, or −1 where that comes too late to resolve to. */
function kindAfter(
  piece: number,
  { runs, pieces, next }: Judged,
  grid: ScoringGrid,
  within: number,
): number {
  const run = pieces.run[piece] as number;
  const after = next[run] as number;
  const isLast = (pieces.first[run + 1] as number) - 1 === piece;
  if (after < 0 || !isLast) return -1;
  const wait = (runs.start[after] as number) - (pieces.start[piece] as number);
  const first = pieces.first[after] as number;
  if (wait <= 0 || wait > within || first === pieces.first[after + 1]) return -1;
  return kindOf(first, pieces, grid);
}

function placeReader(
  drawn: Float64Array,
  { tables }: ScoringGrid,
  weights: ScoreWeights,
): (kind: number) => Place {
  const known = new Map<number, Place>();
  const credits = NOTE_CLASSES.map((name) => weights.credit[name]);
  return (kind) => {
    const before = known.get(kind);
    if (before !== undefined) return before;
    const here = tables[Math.floor(kind / (tables.length + 1)) - 1];
    const coming = tables[(kind % (tables.length + 1)) - 1];
    const place = makePlace(here, coming, credits, drawn);
    known.set(kind, place);
    return place;
  };
}

function makePlace(
  here: ChordTable | undefined,
  coming: ChordTable | undefined,
  credits: readonly number[],
  drawn: Float64Array,
): Place {
  const tone = new Float64Array(PITCHES);
  const resting = new Float64Array(PITCHES);
  for (let pitch = 0; pitch < PITCHES; pitch += 1) {
    const isHere = here?.tone[pitch % 12] ?? -1;
    const isThere = coming?.tone[pitch % 12] ?? -1;
    const table = isThere > isHere ? coming : here;
    tone[pitch] = Math.max(isHere, isThere, 0);
    resting[pitch] = credits[table?.resting[pitch % 12] ?? CLASS.unjudged] ?? 0;
  }
  return { tone, resting, stepAway: stepsAway(tone, drawn) };
}

function stepsAway(tone: Float64Array, drawn: Float64Array): Float64Array {
  return tone.map((_, pitch) => {
    let likely = 0;
    for (let step = -STEP; step <= STEP; step += 1) {
      if (step === 0) continue;
      likely += (tone[pitch + step] ?? 0) * (drawn[pitch + step] ?? 0);
    }
    return likely;
  });
}

function meanCredit(
  here: Place,
  after: Place | undefined,
  drawn: Float64Array,
  resolved: number,
): number {
  let mean = 0;
  for (let pitch = 0; pitch < PITCHES; pitch += 1) {
    const share = drawn[pitch] as number;
    if (share === 0) continue;
    const resting = here.resting[pitch] as number;
    const likely = here.tone[pitch] === 1 ? 0 : (after?.stepAway[pitch] ?? 0);
    mean += share * (likely * Math.max(resting, resolved) + (1 - likely) * resting);
  }
  return mean;
}
