import { type ChordTable, SILENCE } from './chord-table.js';
import { STEP } from './figure.js';
import type { ScoringGrid } from './grid.js';
import { type Judged, pitchOf } from './judge.js';
import { NOTE_CLASSES } from './note-class.js';
import type { Pieces } from './pieces.js';
import type { ScoreWeights } from './weights.js';

const PITCHES = 128;

/** What every pitch class is worth at one kind of place in a chart. */
interface Place {
  /** 1 for a chord tone, else 0. */
  readonly tone: readonly number[];
  /** Credit where the note does not resolve. */
  readonly resting: readonly number[];
}

/**
 * The fit that the notes of a line would have on average in any order: every place is given a
 * pitch drawn from the line, as likely as its weight there, and so is the note after it. Exact
 * for that draw, without a random number; null where nothing is judged.
 */
export function chanceFit(judged: Judged, grid: ScoringGrid, weights: ScoreWeights): number | null {
  const { pieces, weight } = judged;
  const within = weights.resolveWithin * grid.beatTicks;
  const kinds = kindsOf(grid);
  const meanAt = meanReader(kinds.tables, drawFrom(judged), weights);
  let sum = 0;
  let total = 0;
  let here = -1;
  let after = -1;
  let mean = 0;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const share = weight[piece] as number;
    if (share === 0) continue;
    const next = pieceAfter(piece, judged, within);
    const kindHere = kindAt(piece, pieces, kinds);
    const kindAfter = next < 0 ? -1 : kindAt(next, pieces, kinds);
    // Neighbours mostly stand alike.
    if (kindHere !== here || kindAfter !== after) {
      here = kindHere;
      after = kindAfter;
      mean = meanAt(here, after);
    }
    sum += share * mean;
    total += share;
  }
  return total === 0 ? null : sum / total;
}

/** The pitches of a line, to be drawn from. */
interface Drawn {
  readonly pitches: readonly number[];
  /** Share of the weight that each MIDI number has. */
  readonly shares: Float64Array;
}

function drawFrom({ runs, pieces, weight }: Judged): Drawn {
  const shares = new Float64Array(PITCHES);
  let total = 0;
  for (let piece = 0; piece < pieces.count; piece += 1) {
    const share = weight[piece] as number;
    const pitch = pitchOf(runs, pieces, piece);
    shares[pitch] = (shares[pitch] as number) + share;
    total += share;
  }
  const pitches: number[] = [];
  for (let pitch = 0; pitch < PITCHES; pitch += 1) {
    if (shares[pitch] === 0) continue;
    pitches.push(pitch);
    shares[pitch] = (shares[pitch] as number) / total;
  }
  return { pitches, shares };
}

/**
 * Kinds of place: of one kind are those with the same chord sounding and the same coming one that
 * a note there may belong to. A kind is one number made of the places of both in `tables`.
 */
interface Kinds {
  readonly tables: readonly ChordTable[];
  /** Place in `tables` of each change's. */
  readonly ofChange: Int32Array;
}

function kindsOf({ changes, tables: chords }: ScoringGrid): Kinds {
  const tables = [SILENCE, ...chords];
  const places = new Map(tables.map((table, place) => [table, place]));
  const ofChange = Int32Array.from(changes, ({ table }) => places.get(table) ?? 0);
  return { tables, ofChange };
}

function kindAt(piece: number, { change, coming }: Pieces, { tables, ofChange }: Kinds): number {
  const here = ofChange[change[piece] as number] as number;
  return here * tables.length + (ofChange[coming[piece] as number] as number);
}

/** First piece of the note struck next, or −1 where that comes too late to resolve to. */
function pieceAfter(piece: number, { runs, pieces, next }: Judged, within: number): number {
  const run = pieces.run[piece] as number;
  const after = next[run] as number;
  const isLast = (pieces.first[run + 1] as number) - 1 === piece;
  if (after < 0 || !isLast) return -1;
  const wait = (runs.start[after] as number) - (pieces.start[piece] as number);
  const first = pieces.first[after] as number;
  return wait <= 0 || wait > within || first === pieces.first[after + 1] ? -1 : first;
}

/** Mean credit at a kind of place, by the kind of the next (−1 for none); each worked out once. */
function meanReader(
  tables: readonly ChordTable[],
  drawn: Drawn,
  weights: ScoreWeights,
): (here: number, after: number) => number {
  const credits = NOTE_CLASSES.map((name) => weights.credit[name]);
  const kinds = tables.length * tables.length;
  const places: Place[] = [];
  const placeAt = (kind: number): Place => {
    const place = places[kind] ?? makePlace(kind, tables, credits);
    places[kind] = place;
    return place;
  };
  const means: number[] = [];
  return (here, after) => {
    const id = here * (kinds + 1) + after + 1;
    const known = means[id];
    if (known !== undefined) return known;
    const next = after < 0 ? undefined : placeAt(after);
    const mean = meanCredit(placeAt(here), next, drawn, weights.resolvedCredit);
    means[id] = mean;
    return mean;
  };
}

function makePlace(kind: number, tables: readonly ChordTable[], credits: readonly number[]): Place {
  const here = tables[Math.floor(kind / tables.length)] as ChordTable;
  const coming = tables[kind % tables.length] as ChordTable;
  const tone: number[] = [];
  const resting: number[] = [];
  here.tone.forEach((isHere, pitchClass) => {
    const isThere = coming.tone[pitchClass] as number;
    const table = isThere > isHere ? coming : here;
    tone.push(Math.max(isHere, isThere, 0));
    resting.push(credits[table.resting[pitchClass] as number] as number);
  });
  return { tone, resting };
}

function meanCredit(
  here: Place,
  after: Place | undefined,
  { pitches, shares }: Drawn,
  resolved: number,
): number {
  let mean = 0;
  for (let at = 0; at < pitches.length; at += 1) {
    const pitch = pitches[at] as number;
    const resting = here.resting[pitch % 12] as number;
    const isTone = here.tone[pitch % 12] === 1;
    const likely = isTone || after === undefined ? 0 : chanceOfStep(pitch, after, shares);
    const share = shares[pitch] as number;
    mean += share * (likely * Math.max(resting, resolved) + (1 - likely) * resting);
  }
  return mean;
}

/** How likely a pitch drawn from the line stands a step away and is a tone of a place. */
function chanceOfStep(from: number, { tone }: Place, shares: Float64Array): number {
  let likely = 0;
  for (let pitch = Math.max(0, from - STEP); pitch <= from + STEP && pitch < PITCHES; pitch += 1) {
    if (pitch !== from) likely += (tone[pitch % 12] as number) * (shares[pitch] as number);
  }
  return likely;
}
