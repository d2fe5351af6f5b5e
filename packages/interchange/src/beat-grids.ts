import type { TimedNote } from '@reedplate/line';

/** Points in time that a line is laid on. */
export interface BeatGrids {
  /** The nearest point, from tick 0 on; of two as near, the later. */
  readonly snap: (tick: number) => number;
  /** The next point after a point. */
  readonly pointAfter: (point: number) => number;
  /** Ticks between the points that lie nearest to each other. */
  readonly finest: number;
}

/** Where the beats lie. */
export interface Beats {
  /** Tick that a beat begins at. */
  readonly origin: number;
  readonly beatTicks: number;
}

/**
 * Lays a grid on each beat: of the steps given, each of which divides the beat, the one that the
 * beginnings in the beat lie nearest to, then the ends.
 */
export function layGrid(
  notes: readonly TimedNote[],
  steps: readonly number[],
  { origin, beatTicks }: Beats,
): BeatGrids {
  const beatOf = (tick: number): number => Math.floor((tick - origin) / beatTicks);
  const starts = gatherBy(
    notes.map(({ start }) => start),
    beatOf,
  );
  const ends = gatherBy(
    notes.map(({ start, duration }) => start + duration),
    beatOf,
  );
  const chosen = new Map<number, number>();
  const stepOf = (beat: number): number => {
    const known = chosen.get(beat);
    if (known !== undefined) return known;
    const step = nearestStep(steps, [starts.get(beat) ?? [], ends.get(beat) ?? []], origin);
    chosen.set(beat, step);
    return step;
  };
  const stepAt = (tick: number): number => stepOf(beatOf(tick));
  const pointAfter = (point: number): number => point + stepAt(point);
  const snap = (tick: number): number => {
    const point = nearestPoint(tick, stepAt(tick), origin);
    return point >= 0 ? point : point + stepAt(tick);
  };
  return { snap, pointAfter, finest: Math.min(...steps) };
}

function gatherBy(
  ticks: readonly number[],
  keyOf: (tick: number) => number,
): ReadonlyMap<number, readonly number[]> {
  const gathered = new Map<number, number[]>();
  for (const tick of ticks) {
    const before = gathered.get(keyOf(tick));
    if (before === undefined) gathered.set(keyOf(tick), [tick]);
    else before.push(tick);
  }
  return gathered;
}

/** Beginnings decide; where they leave it open, ends; then the first step. */
function nearestStep(
  steps: readonly number[],
  deciders: readonly (readonly number[])[],
  origin: number,
): number {
  let open = steps;
  for (const ticks of deciders) {
    const away = open.map((step) =>
      ticks.reduce((sum, tick) => sum + Math.abs(tick - nearestPoint(tick, step, origin)), 0),
    );
    const least = Math.min(...away);
    open = open.filter((_, at) => away[at] === least);
  }
  return open[0] as number;
}

function nearestPoint(tick: number, step: number, origin: number): number {
  return origin + Math.round((tick - origin) / step) * step;
}
