import {
  type Harp,
  type Sounding,
  type SoundingOptions,
  soundings,
  soundingsOfPitch,
} from '@reedplate/layout';
import { type Line, parseMetre } from '@reedplate/line';
import type { EffortModel } from './effort-model.js';

// The rules of effort written a second time, as plainly as the documentation puts them, with every
// way listed. Nothing here is shared with what it checks.

/** A way through a line with the cost of each step, in thousandths of a point. */
export interface ListedWay {
  readonly grips: readonly (readonly Sounding[])[];
  readonly steps: readonly number[];
  readonly total: number;
}

export interface BruteForceOptions extends SoundingOptions {
  readonly tempo?: number;
}

/** Every way to play a line, the cheapest first, ties from the last event back by place in order. */
export function everyWay(
  line: Line,
  harp: Harp,
  model: EffortModel,
  options: BruteForceOptions,
): readonly ListedWay[] {
  const events = eventsIn(line, options.tempo);
  const columns = events.map(({ pitches }) => gripsFor(pitches, harp, options));
  const indexes = columns.reduce<readonly (readonly number[])[]>(
    (ways, column) => ways.flatMap((way) => column.map((_, index) => [...way, index])),
    [[]],
  );
  return indexes
    .map((way) => {
      const grips = way.map((index, at) => columns[at]?.[index] ?? []);
      const steps = costsOf(grips, events, model);
      return { way, grips, steps, total: steps.reduce((sum, step) => sum + step, 0) };
    })
    .sort((a, b) => a.total - b.total || fromTheEnd(a.way, b.way));
}

function fromTheEnd(a: readonly number[], b: readonly number[]): number {
  for (let at = a.length - 1; at >= 0; at -= 1) {
    const difference = (a[at] ?? 0) - (b[at] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

interface TimedPitches {
  readonly pitches: readonly number[];
  /** Ticks. */
  readonly start: number;
  readonly end: number;
  /** Seconds a tick lasts. */
  readonly tick: number;
}

export function eventsIn(line: Line, tempo?: number): readonly TimedPitches[] {
  const tick = 60 / ((tempo ?? line.tempo ?? 100) * parseMetre(line.metre).beatTicks);
  const starts = [...new Set(line.notes.map(({ start }) => start))];
  return starts.map((start, at) => {
    const notes = line.notes.filter((note) => note.start === start);
    const ends = notes.map(({ duration }) => start + duration);
    const end = Math.min(Math.max(...ends), starts[at + 1] ?? Infinity);
    const pitches = [...new Set(notes.map(({ pitch }) => pitch))];
    return { pitches, start, end, tick };
  });
}

/** Every way to hold pitches at once. */
export function gripsFor(
  pitches: readonly number[],
  harp: Harp,
  options: SoundingOptions,
): readonly (readonly Sounding[])[] {
  if (pitches.length === 1) return soundingsOfPitch(harp, pitches[0] ?? 0, options).map((s) => [s]);
  const natural = soundings(harp, { level: 'natural' });
  return (['blow', 'draw'] as const).flatMap((breath) => {
    const reeds = natural.filter((sounding) => sounding.breath === breath);
    return pitches
      .reduce<readonly (readonly Sounding[])[]>(
        (grips, pitch) =>
          grips.flatMap((grip) =>
            reeds.filter((reed) => reed.pitch === pitch).map((reed) => [...grip, reed]),
          ),
        [[]],
      )
      .map((grip) => [...grip].sort((a, b) => a.hole - b.hole))
      .filter((grip) => lastHole(grip) - firstHole(grip) < 5);
  });
}

const firstHole = (grip: readonly Sounding[]): number => grip[0]?.hole ?? 0;
const lastHole = (grip: readonly Sounding[]): number => grip.at(-1)?.hole ?? 0;

function costsOf(
  grips: readonly (readonly Sounding[])[],
  events: readonly TimedPitches[],
  model: EffortModel,
): readonly number[] {
  let air = 0;

  return grips.map((grip, at) => {
    const { start, end, tick } = events[at] as TimedPitches;
    const before = events[at - 1];
    const grid = (ticks: number): number => Math.round(ticks * tick * 10);
    const rest = grid(start) - grid(before?.end ?? 0);
    const back = Math.round(rest * model.weights.recovery);
    const rested = Math.sign(air) * Math.max(0, Math.abs(air) - back);
    const flow = 1 + model.weights.chordAir * (grip.length - 1);
    const amount = Math.round((grid(end) - grid(start)) * flow);
    const aim = rested + (grip[0]?.breath === 'draw' ? amount : -amount);
    const most = Math.round(model.weights.capacity * 10);
    air = Math.sign(aim) * Math.min(Math.abs(aim), most);
    const breathCost = airCost(rested, aim, air, model);
    const since = (start - (before?.start ?? 0)) * tick;
    return (
      breathCost +
      gripCost(grip, (end - start) * tick, model) +
      moveCost(grips[at - 1], grip, since, model)
    );
  });
}

function airCost(rested: number, aim: number, air: number, { weights }: EffortModel): number {
  const comfort = Math.round(weights.comfort * 10);
  const past = (amount: number): number => Math.max(0, Math.abs(amount) - comfort);
  const already = Math.sign(rested) === Math.sign(aim) ? past(rested) : 0;
  const strain = Math.max(0, past(air) - already);
  const snatched = Math.abs(aim - air);
  return (
    strain * Math.round(weights.airStrain * 100) + snatched * Math.round(weights.airSnatch * 100)
  );
}

const thousandths = (points: number): number => Math.round(points * 1000);

function gripCost(
  grip: readonly Sounding[],
  seconds: number,
  { weights, holeRanks }: EffortModel,
): number {
  const [{ technique, breath, hole, depth }] = grip as readonly [Sounding];
  const rank = (ranks: readonly number[]): number => ranks[Math.min(hole, ranks.length) - 1] ?? 0;
  const deeper = thousandths(weights.bendDepth) * (depth - 1);
  const hold = Math.round(thousandths(weights.bendHold) * seconds);
  const bendRanks = breath === 'draw' ? holeRanks.drawBend : holeRanks.blowBend;
  const over = Math.round(thousandths(weights.overbendHole) * rank(holeRanks.overbend));
  const silent = grip.filter((reed, at) => at > 0 && reed.hole - (grip[at - 1]?.hole ?? 0) > 1);
  const technical = {
    natural: 0,
    bend:
      hold +
      deeper +
      thousandths(weights.bend) +
      Math.round(thousandths(weights.bendHole) * rank(bendRanks)) +
      (breath === 'blow' ? thousandths(weights.blowBend) : 0),
    'valved-bend': hold + deeper + thousandths(weights.valvedBend),
    overblow: hold + over + thousandths(weights.overblow),
    overdraw: hold + over + thousandths(weights.overdraw),
  }[technique];
  return (
    technical +
    thousandths(weights.chordHole) * (grip.length - 1) +
    thousandths(weights.split) * silent.length
  );
}

function moveCost(
  from: readonly Sounding[] | undefined,
  to: readonly Sounding[],
  since: number,
  { weights }: EffortModel,
): number {
  const isBent = to[0]?.technique !== 'natural';
  if (from === undefined) return isBent ? thousandths(weights.bendAttack) : 0;
  const wasBent = from[0]?.technique !== 'natural';
  const holes =
    Math.abs(firstHole(from) - firstHole(to)) / 2 + Math.abs(lastHole(from) - lastHole(to)) / 2;
  const turns = from[0]?.breath !== to[0]?.breath;
  const inPlace = !turns && firstHole(from) === firstHole(to) && lastHole(from) === lastHole(to);
  const isRepeat = JSON.stringify(from) === JSON.stringify(to);
  const seconds =
    weights.moveTime * Math.log2(1 + holes) +
    (turns ? weights.turnTime : 0) +
    (isBent && !inPlace ? weights.bendTime : 0);
  // Times needed are told to the microsecond.
  const needed = Math.round(seconds * 1e6) / 1e6;
  const far = thousandths(weights.farReach) * Math.max(0, holes - 3);
  return (
    Math.round(thousandths(weights.reach) * holes + far) +
    (turns ? thousandths(weights.breathChange) : 0) +
    (isBent ? thousandths(inPlace ? weights.bendSlide : weights.bendAttack) : 0) +
    (wasBent && !(isBent && inPlace) ? thousandths(weights.bendRelease) : 0) +
    (isRepeat ? thousandths(weights.repeat) : 0) +
    Math.round(thousandths(weights.hurry) * Math.max(0, needed / since - 1))
  );
}
