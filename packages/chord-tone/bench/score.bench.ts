import assert from 'node:assert/strict';
import { scoreLine, targetsOf } from '@reedplate/chord-tone';
import { formById, makeChart } from '@reedplate/form';
import { makeHarp, soundings } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { noteNameWithOctave } from '@reedplate/pitch';
import { Bench } from 'tinybench';
import { KEEP_CHORDS, KEEP_PAIRS, namedNotes, namedTargets } from './tonal-score.js';

// Targets of a twelve-bar chart, and the notes of a long line, against the same on note names.
// scoreLine gives more in its time: blue and passing notes, credits, measures, changes, bars, the
// chance level and remarks.

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

const TONES: ReadonlySet<string> = new Set(['root', 'guide-tone', 'chord-tone']);
assertAlike();

/** Both name the same tones of the same chords before they are timed. */
function assertAlike(): void {
  twelveBars.forEach((chord, index) => {
    const ours = targetsOf(chord, harp).map(({ name, sounding }) => [name, sounding.hole]);
    const theirs = namedTargets(twelveSymbols[index] ?? '', namedSoundings, KEEP_CHORDS);
    assert.deepEqual(
      ours,
      theirs.map(({ name, hole }) => [name, hole]),
    );
  });
  const theirs = namedNotes(namedLine, namedSpans, KEEP_CHORDS);
  for (const { index, push, ...note } of scoreLine(line, chart).notes) {
    const named = theirs[index];
    // A note pushed into the coming chord is one that the baseline does not know.
    if (push || !TONES.has(note.class)) continue;
    assert.deepEqual([note.name, note.class], [named?.name, named?.class]);
  }
}

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const bench = new Bench({ time: 2000, warmupTime: 500 });
for (const [care, known] of [
  ['chords kept', KEEP_CHORDS],
  ['pairs kept', KEEP_PAIRS],
] as const) {
  bench
    .add(`targets, tonal, ${care}`, () => {
      for (const symbol of twelveSymbols)
        seen += namedTargets(symbol, namedSoundings, known).length;
    })
    .add(`notes, tonal, ${care}`, () => {
      seen += namedNotes(namedLine, namedSpans, known).length;
    });
}
bench
  .add('targets, reedplate', () => {
    for (const chord of twelveBars) seen += targetsOf(chord, harp).length;
  })
  .add('targets, reedplate, chords read anew', () => {
    for (const symbol of twelveSymbols) seen += targetsOf(symbol, harp).length;
  })
  .add('notes, reedplate', () => {
    seen += scoreLine(line, chart).notes.length;
  });
await bench.run();

const rate = (name: string): number => {
  const result = bench.getTask(name)?.result;
  return result !== undefined && 'throughput' in result ? result.throughput.mean : 0;
};
for (const { name } of bench.tasks) {
  const isNotes = name.startsWith('notes');
  const perSecond = Math.round(rate(name) * (isNotes ? line.notes.length : 1));
  const unit = isNotes ? 'notes' : 'charts';
  console.log(`${name.padEnd(38)} ${perSecond.toLocaleString('en').padStart(12)} ${unit} a second`);
}
for (const work of ['targets', 'notes']) {
  for (const care of ['chords kept', 'pairs kept']) {
    const ratio = rate(`${work}, reedplate`) / rate(`${work}, tonal, ${care}`);
    console.log(`${work}: reedplate is ${ratio.toFixed(1)} times tonal with ${care}`);
  }
}
console.log(`(${seen} results seen)`);
