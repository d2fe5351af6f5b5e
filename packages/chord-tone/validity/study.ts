import { type Score, type ScoreMeasures, scoreLine } from '@reedplate/chord-tone';
import { makeLine } from '@reedplate/line';
import { plainShare } from './baseline.js';
import { type Contrast, contrasts, seededRandom } from './contrasts.js';
import { beatsOf, makeChartOfBeats, type Solo } from './read-solos.js';

/** Something that says how well a line follows a chart; null where it cannot tell. */
export interface Judge {
  readonly name: string;
  readonly of: (solo: Solo, score: Score) => number | null;
}

const MEASURES = [
  'chordFit',
  'landing',
  'chordToneShare',
  'guideToneShare',
  'resolution',
  'clashTime',
  'coverage',
] as const satisfies readonly (keyof ScoreMeasures)[];

/** The total, the plain share to beat, and each measure alone (clash time: less is better). */
export const JUDGES: readonly Judge[] = [
  { name: 'total', of: (_, { total }) => total },
  { name: 'plain share', of: (solo) => plainShare(solo) },
  ...MEASURES.map((name) => ({
    name,
    of: (_: Solo, { measures }: Score) => {
      const value = measures[name];
      return value !== null && name === 'clashTime' ? -value : value;
    },
  })),
];

/** For each judge, in what share of its trials the true chart wins: one number a solo. */
export type Wins = ReadonlyMap<string, readonly number[]>;

/** Wins counted before: several tables ask for the same. */
const KNOWN = new WeakMap<readonly Solo[], Map<string, Wins>>();

/** In how many trials the true pairing of each solo outscores a wrong one; a tie is no win. */
export function winsAgainst(contrast: Contrast, solos: readonly Solo[]): Wins {
  const known = KNOWN.get(solos) ?? new Map<string, Wins>();
  KNOWN.set(solos, known);
  const key = `${contrast.name} ${contrast.times}`;
  const wins = known.get(key) ?? countWins(contrast, solos);
  known.set(key, wins);
  return wins;
}

/** What true pairings are given: every contrast asks for the same. */
const TRUTHS = new WeakMap<Solo, ReadonlyMap<string, number | null>>();

function countWins(contrast: Contrast, solos: readonly Solo[]): Wins {
  const wins = new Map<string, number[]>(JUDGES.map(({ name }) => [name, []]));
  for (const solo of solos) {
    const random = seededRandom(solo.id);
    const truth = TRUTHS.get(solo) ?? judgeAll(solo);
    TRUTHS.set(solo, truth);
    const rivals = Array.from({ length: contrast.times }, () =>
      judgeAll(contrast.make(solo, random)),
    );
    for (const { name } of JUDGES) {
      const won = rivals.filter((rival) => isHigher(truth.get(name), rival.get(name))).length;
      wins.get(name)?.push(won / rivals.length);
    }
  }
  return wins;
}

function judgeAll(solo: Solo): ReadonlyMap<string, number | null> {
  // The calibration is level at its ends, where two scores would tie: compare below it.
  const score = scoreLine(solo.line, solo.chart, { weights: { calibration: STRAIGHT } });
  return new Map(JUDGES.map(({ name, of }) => [name, of(solo, score)]));
}

/** A calibration that changes nothing but the scale. */
export const STRAIGHT = [
  { raw: -1, total: -100 },
  { raw: 2, total: 200 },
] as const;

function isHigher(one: number | null | undefined, other: number | null | undefined): boolean {
  return (one ?? Number.NEGATIVE_INFINITY) > (other ?? Number.NEGATIVE_INFINITY);
}

/** Solos cut into windows of so many bars, each with the chart of those bars; few notes are left out. */
export function windowsOf(solos: readonly Solo[], bars: number): readonly Solo[] {
  return solos.flatMap((solo) => {
    const count = Math.floor(solo.chart.bars / bars);
    return Array.from({ length: count }, (_, index) => cutWindow(solo, index, bars)).filter(
      ({ line }) => line.notes.length >= FEWEST_NOTES,
    );
  });
}

const FEWEST_NOTES = 4;
const BEATS_PER_BAR = 4;
const BAR_TICKS = 3840;

function cutWindow({ id, line, chart }: Solo, index: number, bars: number): Solo {
  const from = index * bars * BAR_TICKS;
  const to = from + bars * BAR_TICKS;
  const notes = line.notes
    .filter(({ start }) => start >= from && start < to)
    .map((note) => ({ ...note, start: note.start - from }));
  const beats = beatsOf(chart).slice(
    index * bars * BEATS_PER_BAR,
    (index + 1) * bars * BEATS_PER_BAR,
  );
  return {
    id: id * 1000 + index,
    line: makeLine(notes),
    chart: makeChartOfBeats(chart.key, beats),
  };
}

/** The contrast by which lengths are compared. */
export function pitchShuffle(times: number): Contrast {
  return contrasts(times).at(-1) as Contrast;
}
