import { PITCH_CLASSES, type PitchClass } from '@reedplate/pitch';
import { alignBars, alignmentCost, type BarCosts, type BarPair } from './align-bars.js';
import { addBars, barTable, distancesBetween } from './bar-table.js';
import { addToShortlist, costLimit, type Shortlist } from './shortlist.js';
import type { Form, FormBar } from './types.js';

/** A form on a tonic, and what it costs to take the given bars for it. */
export interface Candidate {
  readonly form: Form;
  readonly tonic: PitchClass;
  readonly choruses: number;
  readonly cost: number;
  /** Sets the given bars beside those of the form; only asked of the few that are shown. */
  readonly align: () => readonly BarPair[];
}

/** Which candidates {@link rankForms} looks at and keeps. */
export interface RankOptions {
  readonly forms: readonly Form[];
  /** None: all twelve. */
  readonly tonic: PitchClass | undefined;
  /** How many are wanted besides the nearest. */
  readonly runnersUp: number;
}

/**
 * The nearest forms on the tonics asked for, cheapest first; on equal cost in the order of the
 * forms. At least the nearest, all that are equally near, and the runners-up are among them.
 *
 * @param given bars with roots counted from C
 */
export function rankForms(given: readonly FormBar[], options: RankOptions): readonly Candidate[] {
  const { forms, tonic, runnersUp } = options;
  const givenTable = barTable();
  const formTable = barTable();
  const givenAt = addBars(givenTable, given);
  const rows = forms.map((form) => ({ form, at: addBars(formTable, form.bars) }));
  const tonics = tonic === undefined ? PITCH_CLASSES : [tonic];
  const distances = new Map(
    tonics.map((home) => [home, distancesBetween(givenTable, formTable, home)]),
  );
  const shortlist: Shortlist<Candidate> = { items: [], runnersUp };
  for (const { form, at } of rows) {
    for (const home of tonics) {
      const bars = barCosts(distances.get(home) ?? [], givenAt, at);
      const candidate = nearestChoruses(form, home, bars, costLimit(shortlist));
      if (candidate.cost <= costLimit(shortlist)) addToShortlist(shortlist, candidate);
    }
  }
  return shortlist.items;
}

function barCosts(
  distances: readonly Float64Array[],
  givenAt: readonly number[],
  formAt: readonly number[],
): BarCosts {
  const costs = new Float64Array(givenAt.length * formAt.length);
  let place = 0;
  for (const given of givenAt) {
    for (const expected of formAt) {
      costs[place] = distances[given]?.[expected] ?? 0;
      place += 1;
    }
  }
  return { costs, given: givenAt.length, barsOfForm: formAt.length };
}

/** As many choruses as fit into the bars, or one more where that is nearer. */
function nearestChoruses(form: Form, tonic: PitchClass, bars: BarCosts, limit: number): Candidate {
  const fewest = Math.max(1, Math.floor(bars.given / bars.barsOfForm));
  const isEnough = bars.given <= fewest * bars.barsOfForm;
  const counts = isEnough ? [fewest] : [fewest, fewest + 1];
  const [first, ...more] = counts.map((choruses): Candidate => {
    const cost = roundCost(alignmentCost(bars, choruses, limit + FINEST_COST));
    return { form, tonic, choruses, cost, align: () => alignBars(bars, choruses) };
  }) as [Candidate, ...Candidate[]];
  return more.reduce((best, other) => (other.cost < best.cost ? other : best), first);
}

/** Bars are not told apart more finely: sums of thirds and tenths of a bar are not exact. */
const FINEST_COST = 1e-6;

/** A cost without the noise of its sum. */
export function roundCost(cost: number): number {
  return Math.round(cost * 1e6) / 1e6;
}
