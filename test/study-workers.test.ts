import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../scripts/lib/root.mjs';

// Worker threads load a built file, so this looks at what is built, where something is.
const CLI = `${ROOT}packages/reedplate/dist/bin.js`;
const isBuilt = existsSync(`${ROOT}packages/study/dist/study-worker.js`);

/** Tunes of very different lengths, so that workers finish out of order. */
const TUNES = Array.from({ length: 150 }, (_, number) => {
  const notes = Array.from({ length: 5 + ((number * 37) % 200) }, (_unused, at) => ({
    start: at * 480,
    duration: 480,
    pitch: 74 + Math.round(11 * Math.sin(at * (0.7 + number / 131))),
  }));
  return number % 40 === 7 ? '{"bad"' : JSON.stringify({ key: 'C', line: { notes } });
});

function study(workers: number) {
  const words = [CLI, 'study', '-', '--tunings', 'standard,dorian', '--workers', `${workers}`];
  return spawnSync(process.execPath, words, { input: TUNES.join('\n'), encoding: 'utf8' });
}

describe.runIf(isBuilt)('reedplate study, built', { timeout: 120_000 }, () => {
  test('study gives the same bytes in the same order on one worker and on three', () => {
    const [one, three] = [study(1), study(3)];
    expect([one.status, three.status]).toEqual([1, 1]);
    const numbers = one.stdout
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line).number);
    expect(numbers).toEqual(TUNES.map((_, at) => at + 1));
    expect(three.stdout).toBe(one.stdout);
    expect(three.stderr).toBe(one.stderr);
    expect(one.stderr).toContain('tune 8: ');
  });
});
