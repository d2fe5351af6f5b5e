import { itemAt, type PitchClass } from '@reedplate/pitch';
import { alignBars, alignmentCost, type BarCosts, type BarPair } from './align-bars.js';
import { addBars, type BarTable, barTable, distancesBetween } from './bar-table.js';
import { CLOSING_BARS, closingVariants } from './closing-variants.js';
import { RECOGNITION_WEIGHTS } from './recognition-weights.js';
import { addToShortlist, costLimit, type Shortlist } from './shortlist.js';
import type { Form, FormBar } from './types.js';

/** A form on a tonic, and what it costs to take the given bars for it. */
export interface Candidate {
  readonly form: Form;
  /** Id of the turnaround or ending that stands for the form's own last two bars, or null. */
  readonly closing: string | null;
  /** The bars compared with: those of the form, or with another closing. */
  readonly bars: readonly FormBar[];
  readonly tonic: PitchClass;
  readonly choruses: number;
  readonly cost: number;
  /** Sets the given bars beside those of the form; only asked of the few that are shown. */
  readonly align: () => readonly BarPair[];
}

/** Which candidates {@link rankForms} looks at and keeps. */
export interface RankOptions {
  readonly forms: readonly Form[];
  readonly tonics: readonly PitchClass[];
  /** How many are wanted besides the nearest. */
  readonly runnersUp: number;
  /** Whether forms are also tried with the closings of the catalogue; default true. */
  readonly closings?: boolean;
  /** A form to leave out, with all its closings. */
  readonly without?: Form;
}

/** What a candidate is made of, with the places of its bars in the table of bars. */
interface Row extends Pick<Candidate, 'form' | 'closing' | 'bars'> {
  readonly at: readonly number[];
  /** Of the form's own bars. */
  readonly ownAt: readonly number[];
}

/**
 * The nearest forms on the tonics asked for, cheapest first; on equal cost a form before one with
 * another closing, then in the order of the forms. At least the nearest, all that are equally near,
 * and the runners-up are among them.
 *
 * @param given bars with roots counted from C
 */
export function rankForms(given: readonly FormBar[], options: RankOptions): readonly Candidate[] {
  const { forms, tonics, runnersUp, closings = true, without } = options;
  const shortlist: Shortlist<Candidate> = { items: [], runnersUp };
  const givenTable = barTable();
  const formTable = barTable();
  const givenAt = addBars(givenTable, given);
  const plain = forms
    .filter((form) => form !== without)
    .map((form) => rowOf(formTable, { form, closing: null, bars: form.bars }));
  const variants = closingVariants(forms);
  addBars(formTable, CLOSING_BARS);
  const played = tonics.map((tonic): Played => {
    return { givenAt, distances: distancesBetween(givenTable, formTable, tonic), tonic };
  });
  const found = played.flatMap((on) =>
    plain.map((row) => ({ row, on, ...tryPlain(shortlist, row, on) })),
  );
  // Another closing can win two bars a chorus, not more.
  const inReach = found.filter(
    ({ cost, reach }) => closings && cost - reach <= costLimit(shortlist),
  );
  for (const { row, on, cost, reach } of inReach.sort((a, b) => a.cost - b.cost)) {
    if (cost - reach > costLimit(shortlist)) continue;
    const closed = (variants.get(row.form) ?? []).map((variant) => rowOf(formTable, variant));
    for (const variant of closed.filter(({ at }) => endsLike(at, on))) {
      add(shortlist, nearestChoruses(variant, on, costLimit(shortlist)));
    }
  }
  return shortlist.items;
}

/** What a form with its own ending costs, and by how much another closing could be cheaper. */
function tryPlain(
  shortlist: Shortlist<Candidate>,
  row: Row,
  on: Played,
): { readonly cost: number; readonly reach: number } {
  const reach = 2 * Math.max(...chorusCounts(row, on));
  const candidate = nearestChoruses(row, on, costLimit(shortlist) + reach);
  add(shortlist, candidate);
  return { cost: candidate.cost, reach };
}

/** Whether the given bars have the last two of these side by side, but for more or fewer tones. */
function endsLike(at: readonly number[], { givenAt, distances }: Played): boolean {
  const isLike = (given: number, bar: number): boolean =>
    itemAt(itemAt(distances, given), bar) <= RECOGNITION_WEIGHTS.extension;
  return givenAt
    .slice(1)
    .some(
      (given, before) =>
        isLike(itemAt(givenAt, before), itemAt(at, -2)) && isLike(given, itemAt(at, -1)),
    );
}

function rowOf(table: BarTable, row: Pick<Row, 'form' | 'closing' | 'bars'>): Row {
  return { ...row, at: addBars(table, row.bars), ownAt: addBars(table, row.form.bars) };
}

function add(shortlist: Shortlist<Candidate>, candidate: Candidate): void {
  if (candidate.cost <= costLimit(shortlist)) addToShortlist(shortlist, candidate);
}

/** The given bars on a tonic: where they stand in their table, and how far each is from each of the forms. */
interface Played {
  readonly givenAt: readonly number[];
  readonly distances: readonly Float64Array[];
  readonly tonic: PitchClass;
}

function barCosts({ distances, givenAt }: Played, formAt: readonly number[]): BarCosts {
  const costs = new Float64Array(givenAt.length * formAt.length);
  let place = 0;
  for (const given of givenAt) {
    for (const expected of formAt) {
      costs[place] = itemAt(itemAt(distances, given), expected);
      place += 1;
    }
  }
  return { costs, given: givenAt.length, barsOfForm: formAt.length };
}

/** As many choruses as fit into the bars, and one more where bars are left. */
function chorusCounts({ at }: Row, { givenAt }: Played): readonly number[] {
  const fewest = Math.max(1, Math.floor(givenAt.length / at.length));
  return givenAt.length <= fewest * at.length ? [fewest] : [fewest, fewest + 1];
}

/** A row with the number of choruses that is nearest. */
function nearestChoruses(row: Row, played: Played, limit: number): Candidate {
  const [first, ...more] = chorusCounts(row, played).flatMap((choruses) => {
    const alike = candidateOf(row, played, { choruses, limit });
    if (row.closing === null || choruses === 1) return [alike];
    return [alike, candidateOf(lastChorusOnly(row, choruses), played, { choruses, limit })];
  }) as [Candidate, ...Candidate[]];
  return more.reduce((best, other) => (other.cost < best.cost ? other : best), first);
}

/** All choruses written out, the closing in the last alone. */
function lastChorusOnly(row: Row, choruses: number): Row {
  const before = <Value>(own: readonly Value[]): readonly Value[] =>
    Array.from({ length: choruses - 1 }, () => own).flat();
  return {
    ...row,
    bars: [...before(row.form.bars), ...row.bars],
    at: [...before(row.ownAt), ...row.at],
  };
}

function candidateOf(
  { form, closing, bars, at, ownAt }: Row,
  played: Played,
  { choruses, limit }: { readonly choruses: number; readonly limit: number },
): Candidate {
  const costs = barCosts(played, at);
  const times = at.length > ownAt.length ? 1 : choruses;
  const cost = roundCost(alignmentCost(costs, times, limit + FINEST_COST));
  return {
    ...{ form, closing, bars, tonic: played.tonic, choruses },
    cost: closing === null ? cost : cost + OTHER_CLOSING,
    align: () => alignBars(costs, times),
  };
}

/** On equal cost a form goes before one with another closing; less than {@link FINEST_COST}. */
const OTHER_CLOSING = 2e-7;

/** Bars are not told apart more finely: sums of thirds and tenths of a bar are not exact. */
const FINEST_COST = 1e-6;

/** A cost without the noise of its sum. */
export function roundCost(cost: number): number {
  return Math.round(cost * 1e6) / 1e6;
}
