import { scoreLine, targetsOf } from '@reedplate/chord-tone';
import { formById, makeChart } from '@reedplate/form';
import { makeHarp, soundings } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { noteNameWithOctave } from '@reedplate/pitch';
import { Bench } from 'tinybench';
import { namedClasses, namedTargets } from './tonal-score.js';

// Targets of a twelve-bar chart, and the classes of a long line, against the same on note names.
// Ours gives more for the same time: measures, changes, bars, remarks, spelled and checked.

const CHORUSES = 100;
const EIGHTH = 480;
const chart = makeChart(formById('quick-change'), { key: 'G', choruses: CHORUSES });
const harp = makeHarp('C');

/** Steps up and down a scale by a fixed pattern: a line of eighths through the whole chart. */
const SCALE = [62, 64, 65, 67, 69, 70, 71, 72, 74, 76, 77] as const;
const line = makeLine(
  Array.from({ length: CHORUSES * 12 * 8 }, (_, index) => ({
    start: index * EIGHTH,
    duration: EIGHTH - 40,
    pitch: SCALE[(index * 7 + Math.floor(index / 5) * 3) % SCALE.length] ?? 60,
  })),
);
const namedLine = line.notes.map(({ pitch, ...time }) => ({
  ...time,
  name: noteNameWithOctave(pitch),
}));
const namedSpans = chart.spans.map(({ chord, start, end }) => ({
  symbol: chord?.symbol ?? '',
  start,
  end,
}));
const namedSoundings = soundings(harp).map(({ pitch, hole }) => ({
  name: noteNameWithOctave(pitch),
  hole,
}));
const twelveBars = chart.spans.slice(0, 12).map(({ chord }) => chord ?? 'G7');
const twelveSymbols = namedSpans.slice(0, 12).map(({ symbol }) => symbol);

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const bench = new Bench({ time: 2000, warmupTime: 500 });
bench
  .add('targets, tonal', () => {
    for (const symbol of twelveSymbols) seen += namedTargets(symbol, namedSoundings).length;
  })
  .add('targets, reedplate', () => {
    for (const chord of twelveBars) seen += targetsOf(chord, harp).length;
  })
  .add('notes, tonal', () => {
    seen += namedClasses(namedLine, namedSpans).length;
  })
  .add('notes, reedplate', () => {
    seen += scoreLine(line, chart).notes.length;
  });
await bench.run();

const rate = (name: string): number => {
  const result = bench.getTask(name)?.result;
  return result !== undefined && 'throughput' in result ? result.throughput.mean : 0;
};
const say = (name: string, perSecond: number): void => {
  console.log(
    `${name.padEnd(24)} ${Math.round(perSecond).toLocaleString('en').padStart(12)} a second`,
  );
};
for (const name of ['targets, tonal', 'targets, reedplate']) say(`${name} (charts)`, rate(name));
for (const name of ['notes, tonal', 'notes, reedplate']) {
  say(`${name} (notes)`, rate(name) * line.notes.length);
}
for (const work of ['targets', 'notes']) {
  const ratio = rate(`${work}, reedplate`) / rate(`${work}, tonal`);
  console.log(`${work}: reedplate is ${ratio.toFixed(1)} times tonal written with care`);
}
console.log(`(${seen} results seen)`);
