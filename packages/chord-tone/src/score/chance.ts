import { type ChordTable, SILENCE } from './chord-table.js';
import { STEP } from './figure.js';
import type { Change, ScoringGrid } from './grid.js';
import type { Judged } from './judge.js';
import type { ScoreWeights } from './weights.js';

/**
 * The chord fit that the notes of a line would have on average in any order: every place is given a
 * pitch drawn from the line, as likely as its weight there, and so is the note after it. Exact
 * for that draw, without a random number; turns of the blues are left out of it. Null where nothing
 * is judged.
 */
export function shuffledFit(
  judged: readonly Judged[],
  grid: ScoringGrid,
  weights: ScoreWeights,
): number | null {
  const within = weights.resolveWithin * grid.beatTicks;
  const meanAt = meanReader(grid, drawFrom(judged), weights);
  let sum = 0;
  let total = 0;
  let after: Judged | undefined;
  let here: Judged | undefined;
  for (let at = judged.length - 1; at >= 0; at -= 1) {
    const one = judged[at] as Judged;
    if (here !== undefined && here.part.note.group !== one.part.note.group) after = here;
    if (!one.part.held) here = one;
    if (one.weight === 0) continue;
    sum += one.weight * meanAt(one, isNear(one, after, within) ? after : undefined);
    total += one.weight;
  }
  return total === 0 ? null : sum / total;
}

/** Whether a note ends with this part, and the next is struck soon enough to resolve to. */
function isNear({ part }: Judged, after: Judged | undefined, within: number): boolean {
  if (!part.last || after === undefined) return false;
  const wait = after.part.note.start - part.start;
  return wait > 0 && wait <= within;
}

/** Pitches of a line, to be drawn from: each with its share of the weight. */
type Drawn = ReadonlyMap<number, number>;

function drawFrom(judged: readonly Judged[]): Drawn {
  const shares = new Map<number, number>();
  let total = 0;
  for (const { part, weight } of judged) {
    if (weight === 0) continue;
    shares.set(part.note.pitch, (shares.get(part.note.pitch) ?? 0) + weight);
    total += weight;
  }
  for (const [pitch, weight] of shares) shares.set(pitch, weight / total);
  return shares;
}

/** What every pitch class is worth at a place: as a note that rests there, and whether it is a tone. */
interface Place {
  readonly tone: readonly boolean[];
  readonly resting: readonly number[];
}

/** Mean credit of what is drawn at a place, by the place of the next; each worked out once. */
function meanReader(
  { changes, tables }: ScoringGrid,
  drawn: Drawn,
  weights: ScoreWeights,
): (here: Judged, after: Judged | undefined) => number {
  const numbers = new Map<ChordTable, number>([SILENCE, ...tables].map((table, at) => [table, at]));
  const size = numbers.size;
  const places = new Map<number, Place>();
  const means = new Map<number, number>();
  const kindOf = ({ part }: Judged): number => {
    const here = (changes[part.clock] as Change).table;
    const coming = part.mayPush ? (changes[part.clock + 1] as Change).table : here;
    return (numbers.get(here) as number) * size + (numbers.get(coming) as number);
  };
  const placeOf = (one: Judged, kind: number): Place => {
    const known = places.get(kind);
    if (known !== undefined) return known;
    const here = (changes[one.part.clock] as Change).table;
    const coming = one.part.mayPush ? (changes[one.part.clock + 1] as Change).table : here;
    const place = makePlace(here, coming, weights);
    places.set(kind, place);
    return place;
  };
  return (here, after) => {
    const kind = kindOf(here);
    const next = after === undefined ? -1 : kindOf(after);
    const id = kind * (size * size + 1) + next + 1;
    const known = means.get(id);
    if (known !== undefined) return known;
    const mean = meanCredit(
      placeOf(here, kind),
      after === undefined ? undefined : placeOf(after, next),
      drawn,
      weights.resolvedCredit,
    );
    means.set(id, mean);
    return mean;
  };
}

function makePlace(here: ChordTable, coming: ChordTable, { credit }: ScoreWeights): Place {
  const tone = here.tone.map((isHere, at) => isHere === 1 || coming.tone[at] === 1);
  const resting = here.resting.map((_, at) => {
    const table = (coming.tone[at] as number) > (here.tone[at] as number) ? coming : here;
    const name = table.resting[at];
    return name === undefined ? 0 : credit[name];
  });
  return { tone, resting };
}

function meanCredit(here: Place, after: Place | undefined, drawn: Drawn, resolved: number): number {
  let mean = 0;
  for (const [pitch, share] of drawn) {
    const resting = here.resting[pitch % 12] as number;
    const likely =
      here.tone[pitch % 12] || after === undefined ? 0 : chanceOfStep(pitch, after, drawn);
    mean += share * (likely * Math.max(resting, resolved) + (1 - likely) * resting);
  }
  return mean;
}

/** How likely a pitch drawn from the line stands a step away and is a tone of a place. */
function chanceOfStep(from: number, { tone }: Place, drawn: Drawn): number {
  let likely = 0;
  for (let pitch = from - STEP; pitch <= from + STEP; pitch += 1) {
    const share = pitch === from ? undefined : drawn.get(pitch);
    if (share !== undefined && tone[pitch % 12]) likely += share;
  }
  return likely;
}

/** The chord fit of a line over charts whose chords change at the same times; null where nothing is judged. */
export type FitsOn = (grids: readonly ScoringGrid[]) => readonly (number | null)[];

/**
 * The chord fit that the line would have over one chord held throughout, averaged over the chords of the
 * chart by the time each has: what playing that does not hear the changes reaches.
 */
export function blindFit(grid: ScoringGrid, fitsOn: FitsOn): number | null {
  const times = [...timeOfChords(grid)];
  const fits = fitsOn(times.map(([table]) => holdChord(grid, table)));
  let sum = 0;
  let total = 0;
  for (const [at, [, time]] of times.entries()) {
    const chordFit = fits[at] ?? null;
    if (chordFit === null) continue;
    sum += time * chordFit;
    total += time;
  }
  return total === 0 ? null : sum / total;
}

/** Ticks that each chord sounds. */
export function timeOfChords({ changes }: ScoringGrid): ReadonlyMap<ChordTable, number> {
  const times = new Map<ChordTable, number>();
  for (const { table, start, end } of changes) {
    if (table.chord !== null) times.set(table, (times.get(table) ?? 0) + end - start);
  }
  return times;
}

/** The same time with one chord throughout. */
export function holdChord(grid: ScoringGrid, table: ChordTable): ScoringGrid {
  const [before, first] = grid.changes as readonly [Change, Change];
  return { ...grid, changes: [before, { ...first, end: grid.end, table }] };
}
