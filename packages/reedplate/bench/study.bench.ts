import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runStudy, writeTunes } from './study-runs.js';

// A large study on one worker and on two, in turns; and the memory of small and large studies.

const folder = mkdtempSync(join(tmpdir(), 'reedplate-bench-'));
const at = (name: string) => join(folder, name);

const ROUNDS = 3;
const LARGE = ['--tunings', 'all', '--positions', '1,2,3,12', '--levels', 'bends,overbends'];
await writeTunes(at('large.ndjson'), 400, 150);
const seconds = new Map<number, number[]>([1, 2].map((workers) => [workers, []]));
for (let round = 0; round < ROUNDS; round += 1) {
  for (const [workers, times] of seconds) {
    const run = await runStudy([at('large.ndjson'), ...LARGE, '--workers', `${workers}`]);
    times.push(run.seconds);
    console.log(`workers ${workers}: ${run.seconds.toFixed(1)} s`);
  }
}
const least = (workers: number): number => Math.min(...(seconds.get(workers) ?? []));
console.log(`one worker : two workers = ${(least(1) / least(2)).toFixed(2)} (least of ${ROUNDS})`);

for (const count of [1000, 10_000, 100_000]) {
  await writeTunes(at('many.ndjson'), count, 24);
  const words = [at('many.ndjson'), '--positions', '1', '--workers', '2'];
  const run = await runStudy(words);
  console.log(
    `${count} tunes: ${run.seconds.toFixed(1)} s, at most ${run.megabytes.toFixed(0)} MB`,
  );
}
rmSync(folder, { recursive: true });
