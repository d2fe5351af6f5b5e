import assert from 'node:assert/strict';
import { scoreLine, targetsOf } from '@reedplate/chord-tone';
import { formById, makeChart } from '@reedplate/form';
import { makeHarp, soundings } from '@reedplate/layout';
import { makeLine, parseMetre } from '@reedplate/line';
import { noteNameWithOctave } from '@reedplate/pitch';
import { Bench } from 'tinybench';
import type { NamedChart } from './tonal-line.js';
import { keepChords, keepPairs } from './tonal-names.js';
import { namedScore } from './tonal-score.js';
import { namedTargets } from './tonal-targets.js';

// Targets of a twelve-bar chart, and scores of lines of several lengths, against the same on note
// names. That both give the same for any line and chart is held by test/tonal-baseline.test.ts.
// scoreLine gives more in its time: bars, the total, its chance level, remarks, the swing.

const EIGHTH = 480;
const form = formById('quick-change');
const harp = makeHarp('C');
const song = { tonic: 'G', style: 'traditional' } as const;
const KEEPERS = [
  ['chords kept', keepChords(song)],
  ['pairs kept', keepPairs(song)],
] as const;

/** Steps up and down a scale by a fixed pattern: a line of eighths through the whole chart. */
const SCALE = [62, 64, 65, 67, 69, 70, 71, 72, 74, 76, 77] as const;

function takeOf(choruses: number) {
  const chart = makeChart(form, { key: 'G', choruses });
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

const takes = [1, 10, 100, 1000].map(takeOf);
const chords = makeChart(form, { key: 'G' }).spans.map(({ chord }) => chord ?? 'G7');
const symbols = chords.map((chord) => (typeof chord === 'string' ? chord : chord.symbol));
const namedSoundings = soundings(harp).map(({ pitch, hole }) => ({
  name: noteNameWithOctave(pitch),
  hole,
}));

/** Both give the same before they are timed. */
for (const { chart, line, named, namedChart } of takes.slice(0, 3)) {
  const ours = scoreLine(line, chart);
  for (const [, compare] of KEEPERS) {
    const theirs = namedScore(named, namedChart, compare);
    assert.deepEqual([theirs.notes, theirs.changes], [ours.notes, ours.changes]);
  }
}

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const bench = new Bench({ time: 1500, warmupTime: 500 });
for (const [care, compare] of KEEPERS) {
  bench.add(`targets, tonal, ${care}`, () => {
    for (const symbol of symbols) seen += namedTargets(symbol, namedSoundings, compare).length;
  });
}
bench
  .add('targets, reedplate', () => {
    for (const chord of chords) seen += targetsOf(chord, harp).length;
  })
  .add('targets, reedplate, chords read anew', () => {
    for (const symbol of symbols) seen += targetsOf(symbol, harp).length;
  });
for (const { choruses, chart, line, named, namedChart } of takes) {
  for (const [care, compare] of KEEPERS) {
    bench.add(`${choruses} choruses, tonal, ${care}`, () => {
      seen += namedScore(named, namedChart, compare).notes.length;
    });
  }
  bench.add(`${choruses} choruses, reedplate`, () => {
    seen += scoreLine(line, chart).notes.length;
  });
}
await bench.run();

/** How often a second, by the median time: the mean belongs to the garbage of the one before. */
function rate(name: string): number {
  const result = bench.getTask(name)?.result;
  return result !== undefined && 'latency' in result ? 1000 / result.latency.p50 : 0;
}

for (const { name } of bench.tasks) {
  const take = takes.find(({ choruses }) => name.startsWith(`${choruses} choruses`));
  const perSecond = Math.round(rate(name) * (take?.line.notes.length ?? 1));
  const unit = take === undefined ? 'charts' : 'notes';
  console.log(`${name.padEnd(38)} ${perSecond.toLocaleString('en').padStart(12)} ${unit} a second`);
}
for (const work of ['targets', ...takes.map(({ choruses }) => `${choruses} choruses`)]) {
  for (const [care] of KEEPERS) {
    const ratio = rate(`${work}, reedplate`) / rate(`${work}, tonal, ${care}`);
    console.log(`${work}: reedplate is ${ratio.toFixed(1)} times tonal with ${care}`);
  }
}
console.log(`(${seen} results seen)`);
