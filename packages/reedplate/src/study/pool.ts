import { type StudiedBatch, type StudyTask, studyBatch } from './batch.js';

/** Something that studies batches, several at once. */
export interface StudyPool {
  readonly workers: number;
  readonly study: (task: StudyTask) => Promise<StudiedBatch>;
  readonly close: () => Promise<void>;
}

/** A pool of worker threads; for one worker, this thread itself. */
export async function openPool(workers: number): Promise<StudyPool> {
  if (workers === 1 || !IS_BUILT) {
    return { workers: 1, study: async (task) => studyBatch(task), close: async () => {} };
  }
  // Only studies need it, so no other verb waits for it to load.
  const { Tinypool } = await import('tinypool');
  const pool = new Tinypool({
    filename: new URL('./study-worker.js', import.meta.url).href,
    name: 'studyBatch',
    minThreads: workers,
    maxThreads: workers,
  });
  return { workers, study: (task) => pool.run(task), close: () => pool.destroy() };
}

/** Run from source, there is no built file for a worker to load. */
const IS_BUILT = !import.meta.url.endsWith('.ts');
