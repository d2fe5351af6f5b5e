import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { liveMemory, runStudy, type StudyRun, writeTunes } from './study-runs.js';

// A large study on one worker, on two, and as two studies of half the tunes side by side, which is
// what the machine allows; in turns. And the memory of small and large studies.

const folder = mkdtempSync(join(tmpdir(), 'reedplate-bench-'));
const at = (name: string) => join(folder, name);

const ROUNDS = 3;
const TUNES = 2000;
const LARGE = ['--tunings', 'all', '--positions', '1,2,3,12', '--levels', 'bends,overbends'];
await writeTunes(at('large.ndjson'), TUNES, 150);
const halves = await halve(at('large.ndjson'));

const one = () => runStudy([at('large.ndjson'), ...LARGE, '--workers', '1']);
const two = () => runStudy([at('large.ndjson'), ...LARGE, '--workers', '2']);
async function sideBySide(): Promise<StudyRun> {
  const begun = performance.now();
  const runs = await Promise.all(
    halves.map((half) => runStudy([half, ...LARGE, '--workers', '1'])),
  );
  const megabytes = runs.reduce((sum, run) => sum + run.megabytes, 0);
  return { seconds: (performance.now() - begun) / 1000, megabytes };
}

const ratios: number[] = [];
const ceilings: number[] = [];
for (let round = 0; round < ROUNDS; round += 1) {
  const [alone, both, apart] = [await one(), await two(), await sideBySide()];
  ratios.push(alone.seconds / both.seconds);
  ceilings.push(alone.seconds / apart.seconds);
  const said = [alone, both, apart].map(({ seconds }) => `${seconds.toFixed(2)} s`);
  console.log(`one worker, two workers, two studies of halves: ${said.join(', ')}`);
}
const median = (values: readonly number[]): string =>
  ([...values].sort((a, b) => a - b)[values.length >> 1] ?? Number.NaN).toFixed(2);
const spread = (values: readonly number[]): string =>
  `${Math.min(...values).toFixed(2)} to ${Math.max(...values).toFixed(2)}`;
console.log(`one worker : two workers = ${median(ratios)} (${spread(ratios)})`);
console.log(`one worker : two studies of halves = ${median(ceilings)} (${spread(ceilings)})`);

for (const workers of ['1', '2']) {
  for (const count of [1000, 10_000, 100_000]) {
    await writeTunes(at('many.ndjson'), count, 24);
    const words = [at('many.ndjson'), '--positions', '1', '--workers', workers];
    const { seconds, megabytes } = await runStudy(words);
    console.log(
      `${workers} workers, ${count} tunes: ${seconds.toFixed(1)} s, at most ${megabytes.toFixed(0)} MB`,
    );
    const live = await liveMemory(words, at(`live-${workers}-${count}`));
    const said = live.map(
      ({ thread, megabytes: held }) => `thread ${thread} ${held.toFixed(1)} MB`,
    );
    console.log(`  live at the end: ${said.join(', ')}`);
  }
}
rmSync(folder, { recursive: true });

/** The tunes of a file as two files of half as many. */
async function halve(path: string): Promise<readonly string[]> {
  const lines = readFileSync(path, 'utf8').trimEnd().split('\n');
  const half = lines.length / 2;
  return [lines.slice(0, half), lines.slice(half)].map((part, index) => {
    const file = at(`half-${index}.ndjson`);
    writeFileSync(file, `${part.join('\n')}\n`);
    return file;
  });
}
