import { setFlagsFromString } from 'node:v8';
import { type StudiedBatch, type StudyTask, studyBatch } from './batch.js';

/** Something that studies batches, several at once. */
export interface StudyPool {
  readonly workers: number;
  readonly study: (task: StudyTask) => Promise<StudiedBatch>;
  readonly close: () => Promise<void>;
}

/**
 * Memory of a worker, in megabytes. Garbage is thrown away as soon as a little has gathered, so that
 * a long study takes no more than a short one; the larger limit is for a tune of a hundred
 * thousand notes.
 */
const MEMORY = { maxYoungGenerationSizeMb: 3, maxOldGenerationSizeMb: 512 };

/**
 * Makes every heap of the process, this thread's too, collect its old generation after 2 MB more
 * instead of 8: live objects are 5 to 8 MB a thread, so that what a long study took more than a
 * short one was garbage. It costs 6 % of the time. It is a flag of the whole process, which a study has to itself.
 */
function collectSoon(): void {
  setFlagsFromString('--optimize-for-size');
}

/**
 * A pool of worker threads, of one too: this thread only reads and writes. Run from source, there is
 * no built file for a worker to load, and this thread does the work.
 */
export async function openPool(workers: number): Promise<StudyPool> {
  if (!IS_BUILT) {
    return { workers: 1, study: async (task) => studyBatch(task), close: async () => {} };
  }
  // Only studies need it, so no other verb waits for it to load.
  const { Tinypool } = await import('tinypool');
  collectSoon();
  const pool = new Tinypool({
    filename: new URL('./study-worker.js', import.meta.url).href,
    name: 'studyBatch',
    minThreads: workers,
    maxThreads: workers,
    resourceLimits: MEMORY,
  });
  return { workers, study: (task) => pool.run(task), close: () => pool.destroy() };
}

const IS_BUILT = !import.meta.url.endsWith('.ts');
