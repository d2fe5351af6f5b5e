import assert from 'node:assert/strict';
import { scoreLine, targetsOf } from '@reedplate/chord-tone';
import { formById, makeChart } from '@reedplate/form';
import { makeHarp, soundings } from '@reedplate/layout';
import { makeLine, parseMetre } from '@reedplate/line';
import { noteNameWithOctave } from '@reedplate/pitch';
import type { NamedChart } from './tonal-line.js';
import { keepChords, keepPairs } from './tonal-names.js';
import { namedScore } from './tonal-score.js';
import { namedTargets } from './tonal-targets.js';

// Targets of a twelve-bar chart, and scores of lines of several lengths, against the same on note
// names. That both give the same for any line and chart is held by test/tonal-baseline.test.ts.
// Both compute every stage, chance, readings and total included; scoreLine gives more in its time: the
// swing, timing and chord fit by bar, verdict and remarks.

const EIGHTH = 480;
const form = formById('quick-change');
const harp = makeHarp('C');
const song = { tonic: 'G', style: 'blues' } as const;
const KEEPERS = [
  ['chords kept', keepChords(song)],
  ['pairs kept', keepPairs(song)],
] as const;

/** Steps up and down a scale by a fixed pattern: a line of eighths through the whole chart. */
const SCALE = [62, 64, 65, 67, 69, 70, 71, 72, 74, 76, 77] as const;

function takeOf(choruses: number) {
  const chart = makeChart(form, 'G', { choruses });
  const line = makeLine(
    Array.from({ length: choruses * 12 * 8 }, (_, index) => ({
      start: index * EIGHTH,
      duration: EIGHTH - 40,
      pitch: SCALE[(index * 7 + Math.floor(index / 5) * 3) % SCALE.length] ?? 60,
    })),
  );
  const named = line.notes.map(({ pitch, ...time }) => ({
    ...time,
    name: noteNameWithOctave(pitch),
  }));
  const spans = chart.spans.map(({ chord, ...span }) => ({ ...span, symbol: chord?.symbol ?? '' }));
  const namedChart: NamedChart = { ...parseMetre(chart.metre), pickup: 0, spans };
  return { choruses, chart, line, named, namedChart };
}

const takes = [1, 10, 100].map(takeOf);
const chords = makeChart(form, 'G').spans.map(({ chord }) => chord ?? 'G7');
const symbols = chords.map((chord) => (typeof chord === 'string' ? chord : chord.symbol));
const namedSoundings = soundings(harp).map(({ pitch, hole }) => ({
  name: noteNameWithOctave(pitch),
  hole,
}));

/** Both give the same before they are timed. */
for (const { chart, line, named, namedChart } of takes.slice(0, 2)) {
  const ours = scoreLine(line, chart);
  for (const [, compare] of KEEPERS) {
    const theirs = namedScore(named, namedChart, compare, song.tonic);
    assert.deepEqual([theirs.notes, theirs.changes], [ours.notes, ours.changes]);
    assert.ok(Math.abs(theirs.total - ours.total) < 1e-6);
  }
}

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;

/** What is timed: some work, and how many charts or notes it does. */
interface Task {
  readonly name: string;
  readonly amount: number;
  readonly work: () => number;
}

const targets: readonly Task[] = [
  ...KEEPERS.map(([care, compare]) => ({
    name: `tonal, ${care}`,
    amount: 1,
    work: () => {
      let found = 0;
      for (const symbol of symbols) found += namedTargets(symbol, namedSoundings, compare).length;
      return found;
    },
  })),
  {
    name: 'reedplate',
    amount: 1,
    work: () => {
      let found = 0;
      for (const chord of chords) found += targetsOf(chord, harp).length;
      return found;
    },
  },
];

function scores({ chart, line, named, namedChart }: (typeof takes)[number]): readonly Task[] {
  const amount = line.notes.length;
  return [
    ...KEEPERS.map(([care, compare]) => ({
      name: `tonal, ${care}`,
      amount,
      work: () => namedScore(named, namedChart, compare, song.tonic).notes.length,
    })),
    { name: 'reedplate', amount, work: () => scoreLine(line, chart).notes.length },
  ];
}

const WARM_UP = 2;
const ROUNDS = 7;
/** Shortest time that a round takes, in microseconds of the processor. */
const ROUND = 30_000;

/** How much of a task is done in a second of processor time. */
function rateOf({ amount, work }: Task): number {
  let [done, spent, batch] = [0, 0, 1];
  const begin = process.cpuUsage();
  while (spent < ROUND) {
    for (let turn = 0; turn < batch; turn += 1) seen += work();
    done += amount * batch;
    // Reading the time costs more than the shortest work: the batches grow until it does not show.
    batch *= 2;
    const { user, system } = process.cpuUsage(begin);
    spent = user + system;
  }
  return (done / spent) * 1e6;
}

/** Rates of tasks in turns, round by round, so that other work on the machine falls on all alike. */
function ratesOf(tasks: readonly Task[]): readonly (readonly number[])[] {
  const rates = tasks.map((): number[] => []);
  for (let round = -WARM_UP; round < ROUNDS; round += 1) {
    tasks.forEach((task, at) => {
      const rate = rateOf(task);
      if (round >= 0) rates[at]?.push(rate);
    });
  }
  return rates;
}

function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? 0;
}

const whole = (value: number): string => Math.round(value).toLocaleString('en');

function report(title: string, tasks: readonly Task[]): void {
  const rates = ratesOf(tasks);
  const ours = rates.at(-1) ?? [];
  tasks.forEach(({ name }, at) => {
    const own = rates[at] ?? [];
    const ratios = ours.map((rate, round) => rate / (own[round] ?? 1));
    const [low, middle, high] = [0.25, 0.5, 0.75].map((share) => quantile(ratios, share));
    const spread = `${low?.toFixed(1)} to ${high?.toFixed(1)}`;
    console.log(
      `${title}, ${name}`.padEnd(38),
      whole(quantile(own, 0.5)).padStart(11),
      `a second; reedplate does ${middle?.toFixed(1)} times as many (${spread})`,
    );
  });
}

report('targets of twelve bars', targets);
for (const take of takes) report(`${take.line.notes.length} notes`, scores(take));
console.log(`(${seen} results seen)`);
