import { makeChart } from '@reedplate/form';
import { chartPicture, handoutPage, harpPicture, linePicture } from '@reedplate/picture';
import { practiceLine } from '@reedplate/practice';
import { Bench } from 'tinybench';

// What pictures and a handout cost, in milliseconds and against one walk over a text as long as theirs.

const chart = makeChart('quick-change', 'G', { tempo: 96 });
const { line, steps } = practiceLine(chart, 'C', { kind: 'arpeggios', level: 'natural' });
const soundings = steps.map((step) => step.soundings);
const lesson = (): string =>
  handoutPage(chart, 'C', { lines: [{ title: 'Arpeggios', line, soundings }] });

const TASKS: readonly (readonly [string, () => string])[] = [
  ['harpPicture with a chord', () => harpPicture('C', { key: 'G', chord: 'G7' }).svg],
  ['chartPicture with holes', () => chartPicture(chart, { harp: 'C' }).svg],
  ['linePicture of twelve bars', () => linePicture(line, 'C', { chart, soundings }).svg],
  ['handoutPage with one line', lesson],
];

/** Keeps the results alive, so that no work is optimised away. */
let seen = 0;
const walk = (text: string): void => {
  for (let at = 0; at < text.length; at += 1) seen += text.charCodeAt(at);
};

const bench = new Bench({ time: 1500, warmupTime: 300 });
for (const [name, draw] of TASKS) {
  const text = draw();
  bench.add(`${name}: the walk`, () => walk(text));
  bench.add(name, () => {
    seen += draw().length;
  });
}
await bench.run();

for (const [name] of TASKS) {
  const median = (task: string): number => {
    const result = bench.getTask(task)?.result;
    return result !== undefined && 'latency' in result ? result.latency.p50 : Number.NaN;
  };
  const [own, base] = [median(name), median(`${name}: the walk`)];
  const fastest = bench.getTask(name)?.result;
  const least = fastest !== undefined && 'latency' in fastest ? fastest.latency.min : Number.NaN;
  console.log(
    `${name}: median ${own.toFixed(2)} ms, fastest ${least.toFixed(2)} ms, ${(own / base).toFixed(0)} walks`,
  );
}
if (seen === 0) throw new Error('nothing was drawn');
