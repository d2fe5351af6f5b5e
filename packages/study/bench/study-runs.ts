import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createWriteStream, existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const CLI = fileURLToPath(new URL('../../reedplate/dist/bin.js', import.meta.url));

/** What one run of a study took. */
export interface StudyRun {
  readonly seconds: number;
  /** Most memory of the process, in megabytes. */
  readonly megabytes: number;
}

/** Writes invented tunes: each wanders up and down a harp its own way, the same every time. */
export async function writeTunes(path: string, count: number, notes: number): Promise<void> {
  const file = createWriteStream(path);
  for (let number = 0; number < count; number += 1) {
    const line = Array.from({ length: notes }, (_, at) => ({
      start: at * 480,
      duration: 480,
      pitch: 74 + Math.round(11 * Math.sin(at * (0.7 + (number % 97) / 131))),
    }));
    const text = JSON.stringify({ id: `${number}`, key: 'C', line: { tempo: 120, notes: line } });
    if (!file.write(`${text}\n`)) await once(file, 'drain');
  }
  file.end();
  await once(file, 'close');
}

/** Runs the built command once, watching its memory. */
export async function runStudy(words: readonly string[]): Promise<StudyRun> {
  const begun = performance.now();
  const child = spawn(process.execPath, [CLI, 'study', ...words], {
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  let megabytes = 0;
  const watch = setInterval(() => {
    megabytes = Math.max(megabytes, peakMegabytes(child.pid));
  }, 20);
  const [code] = await once(child, 'close');
  clearInterval(watch);
  if (code !== 0) throw new Error(`reedplate study ended with ${code}`);
  return { seconds: (performance.now() - begun) / 1000, megabytes };
}

/** What is live in a thread after a collection of all garbage, at the end of a study. */
export interface LiveMemory {
  /** 0 is the main thread. */
  readonly thread: number;
  /** Objects, and memory outside the heap that they hold, in megabytes. */
  readonly megabytes: number;
}

const WATCH = fileURLToPath(new URL('./study-live.mjs', import.meta.url));

/** Runs the built command once, collecting garbage again and again; `notes` is a file for what is seen. */
export async function liveMemory(
  words: readonly string[],
  notes: string,
): Promise<readonly LiveMemory[]> {
  const child = spawn(process.execPath, ['--import', WATCH, CLI, 'study', ...words], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, LIVE_MEMORY: notes },
  });
  const [code] = await once(child, 'close');
  if (code !== 0) throw new Error(`reedplate study ended with ${code}`);
  const last = new Map<number, number>();
  for (const line of readFileSync(notes, 'utf8').trimEnd().split('\n')) {
    const { threadId, heapUsed, external } = JSON.parse(line);
    last.set(threadId, (heapUsed + external) / 1024 / 1024);
  }
  return Array.from(last, ([thread, megabytes]) => ({ thread, megabytes }));
}

/** Linux keeps a process's high-water mark. */
function peakMegabytes(pid: number | undefined): number {
  const file = `/proc/${pid}/status`;
  if (!existsSync(file)) return 0;
  const [, kilobytes = '0'] = /^VmHWM:\s+(\d+) kB$/mu.exec(readFileSync(file, 'utf8')) ?? [];
  return Number(kilobytes) / 1024;
}
