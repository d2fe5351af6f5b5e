import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { makeChart } from '@reedplate/form';
import { type Line, makeLine } from '@reedplate/line';
import { everyHarp, fitHarpsAsync } from '@reedplate/playability';
import { composeLineAsync } from '@reedplate/practice';
import { makeStudySetup, studyFiles, tuningChangesAsync } from '@reedplate/study';

// How long after the moment at which they are told to stop long calls end: 100 ms is what is promised. What
// keeps the signal itself from coming counts, so it is taken from the moment that was meant.

const MOMENTS = [50, 130, 310, 700];
const ROUNDS = 3;
const PROMISED = 100;

type Call = (signal: AbortSignal) => Promise<unknown>;

/** A tune that wanders up and down a harp, each its own way. */
function tuneOf(number: number, notes: number): Line {
  return makeLine(
    Array.from({ length: notes }, (_, at) => ({
      start: at * 480,
      duration: 480,
      pitch: 72 + Math.round(10 * Math.sin(at * (1 + number / 7))),
    })),
  );
}

/** Milliseconds from the moment meant to the end; none where the call was done before. */
async function timeToEnd(call: Call, moment: number): Promise<readonly number[]> {
  const control = new AbortController();
  const meant = performance.now() + moment;
  const timer = setTimeout(() => control.abort(), moment);
  try {
    await call(control.signal);
    return [];
  } catch (error) {
    if (error !== control.signal.reason) throw error;
    return [performance.now() - meant];
  } finally {
    clearTimeout(timer);
  }
}

const folder = mkdtempSync(join(tmpdir(), 'reedplate-abort-'));
const corpus = join(folder, 'tunes.ndjson');
const tunes = Array.from({ length: 3000 }, (_, number) => ({
  key: 'C',
  line: tuneOf(number, 150),
}));
writeFileSync(corpus, tunes.map((tune) => `${JSON.stringify(tune)}\n`).join(''));
const setup = makeStudySetup({ positions: [1, 2, 3, 12], levels: ['bends', 'overbends'] });
const chart = makeChart('basic', 'G', { choruses: 200 });
const long = tuneOf(1, 20_000);
const lines = Array.from({ length: 60 }, (_, number) => tuneOf(number, 200));
const octaves = [-12, 0, 12];
let runs = 0;
const out = (): string => {
  runs += 1;
  return join(folder, `results-${runs}.ndjson`);
};

const CALLS: readonly (readonly [string, Call])[] = [
  [
    'fitHarpsAsync, 20,000 notes on every harp',
    (signal) => fitHarpsAsync(long, everyHarp(), { transpositions: octaves, signal }),
  ],
  [
    'tuningChangesAsync, 60 tunes, two reeds at once',
    (signal) =>
      tuningChangesAsync(lines, 'standard', { reeds: 2, transpositions: octaves, signal }),
  ],
  ['composeLineAsync, 200 choruses', (signal) => composeLineAsync(chart, 'C', { signal })],
  ['studyFiles, 3000 tunes', (signal) => studyFiles([corpus], setup, { out: out(), signal })],
];

for (const [name, call] of CALLS) {
  const times: number[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    for (const moment of MOMENTS) times.push(...(await timeToEnd(call, moment)));
  }
  const sorted = [...times].sort((a, b) => a - b);
  const median = sorted[sorted.length >> 1] ?? Number.NaN;
  const within = sorted.filter((time) => time <= PROMISED).length;
  console.log(
    `${name}: ${sorted.length} aborts, median ${median.toFixed(0)} ms, longest ${(sorted.at(-1) ?? Number.NaN).toFixed(0)} ms, ${within} within ${PROMISED} ms`,
  );
}
rmSync(folder, { recursive: true });
