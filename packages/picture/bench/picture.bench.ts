import { makeChart } from '@reedplate/form';
import { chartPicture, handoutPage, harpPicture, linePicture } from '@reedplate/picture';
import { practiceLine } from '@reedplate/practice';

// What pictures and a handout cost: medians of wall clock and of processor time, in milliseconds, and against
// one walk over a text as long as theirs. On a busy machine the wall clock waits for others; the processor
// time does not.

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

interface Cost {
  readonly wall: number;
  readonly processor: number;
}

function costOf(work: () => void): Cost {
  const [began, used] = [process.hrtime.bigint(), process.cpuUsage()];
  work();
  const { user, system } = process.cpuUsage(used);
  return {
    wall: Number(process.hrtime.bigint() - began) / 1e6,
    processor: (user + system) / 1e3,
  };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

const [WARM, ROUNDS] = [40, 100];

for (const [name, draw] of TASKS) {
  const text = draw();
  for (let round = 0; round < WARM; round += 1) seen += draw().length;
  const costs = Array.from({ length: ROUNDS }, () =>
    costOf(() => {
      seen += draw().length;
    }),
  );
  // A walk is too short to be timed alone.
  const walks = costOf(() => {
    for (let round = 0; round < ROUNDS; round += 1) walk(text);
  });
  const [wall, processor] = [costs.map((cost) => cost.wall), costs.map((cost) => cost.processor)];
  console.log(
    `${name}: median ${median(wall).toFixed(2)} ms by the clock, ${median(processor).toFixed(2)} ms of ` +
      `processor time, ${((median(processor) * ROUNDS) / walks.processor).toFixed(0)} walks`,
  );
}
if (seen === 0) throw new Error('nothing was drawn');
