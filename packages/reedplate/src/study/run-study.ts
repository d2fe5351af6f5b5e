import type { StudySetup } from '@reedplate/playability';
import type { StudiedBatch, StudyBatch } from './batch.js';
import type { StudyPool } from './pool.js';

/** Batches under way for each worker: one in hand and one waiting, so that none stands idle. */
const AHEAD = 2;

/**
 * Runs a study: batches go out to the pool as they are read, results come in the order of the
 * input, and no more than a few batches are ever held, however slowly results are taken.
 */
export async function* runStudy(
  batches: AsyncIterable<StudyBatch>,
  setup: StudySetup,
  pool: StudyPool,
): AsyncGenerator<StudiedBatch> {
  const text = JSON.stringify(setup);
  const pending: Promise<StudiedBatch>[] = [];
  for await (const batch of batches) {
    const studied = pool.study({ ...batch, setup: text });
    // It is awaited in its turn; until then a failure must not count as unhandled.
    studied.catch(() => {});
    pending.push(studied);
    if (pending.length >= pool.workers * AHEAD) yield (await pending.shift()) as StudiedBatch;
  }
  for (const studied of pending) yield await studied;
}
