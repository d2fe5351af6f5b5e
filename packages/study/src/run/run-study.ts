import { basename } from 'node:path';
import { failureOf } from '../study.js';
import { studyDigest } from '../study-digest.js';
import type { StudySetup } from '../study-setup.js';
import type { StudiedBatch } from './batch.js';
import { makePace, type Pace } from './pace.js';
import type { StudyPool } from './pool.js';
import type { StudyItem } from './read-batches.js';
import { isInShare, type StudyShare } from './share.js';
import { makeSlots } from './slots.js';

/** What came of some lines: output that is good until the next is asked for. */
export interface StudiedLines extends Omit<StudiedBatch, 'out' | 'took'> {
  readonly out: Uint8Array | string;
}

/** Batches under way for each worker: one in hand, others waiting, so that none stands idle. */
const AHEAD = 3;

/** How {@link runStudy} goes on. */
export interface RunStudyOptions {
  readonly pace?: Pace;
  /** Which tunes are studied; default all. */
  readonly share?: StudyShare | undefined;
  /** Ends the study when it is aborted, without waiting for what is under way. */
  readonly signal?: AbortSignal;
}

/**
 * Runs a study: batches go out to the pool as they are read, results come in the order of the
 * input, and no more than a few batches are ever held, however slowly results are taken.
 *
 * @throws the reason of the signal where it is aborted
 */
export async function* runStudy(
  items: AsyncIterable<StudyItem>,
  setup: StudySetup,
  pool: StudyPool,
  { pace = makePace(), signal, share }: RunStudyOptions = {},
): AsyncGenerator<StudiedLines> {
  const text = JSON.stringify(setup);
  const slots = makeSlots();
  const pending: Promise<Done>[] = [];
  async function studied(item: StudyItem): Promise<Done> {
    if ('error' in item) {
      const lines = isInShare(item.first, share) ? failed(item, setup) : NOTHING;
      return { lines, giveBack: () => {} };
    }
    const slot = slots.take(item.lines);
    const lines = slot.lines.subarray(0, item.lines.length);
    const task = {
      first: item.first,
      lines,
      room: slot.room,
      setup: text,
      ...(share && { share }),
    };
    const { out, took, ...rest } = await pool.study(task);
    pace.note(took);
    const found = typeof out === 'number' ? slot.room.subarray(0, out) : out;
    return { lines: { ...rest, out: found }, giveBack: () => slots.giveBack(slot) };
  }
  async function* next(): AsyncGenerator<StudiedLines> {
    const done = await unlessAborted(pending.shift() as Promise<Done>, signal);
    yield done.lines;
    done.giveBack();
  }
  for await (const item of items) {
    signal?.throwIfAborted();
    const begun = studied(item);
    // It is awaited in its turn; until then a failure must not count as unhandled.
    begun.catch(() => {});
    pending.push(begun);
    if (pending.length >= pool.workers * AHEAD) yield* next();
  }
  while (pending.length > 0) yield* next();
}

/** What is waited for, or the reason of the signal as soon as it is aborted, and then at once. */
async function unlessAborted<Result>(
  work: Promise<Result>,
  signal: AbortSignal | undefined,
): Promise<Result> {
  if (signal === undefined) return work;
  signal.throwIfAborted();
  let stop = (): void => {};
  const aborted = new Promise<never>((_, reject) => {
    stop = () => reject(signal.reason);
    signal.addEventListener('abort', stop);
  });
  try {
    return await Promise.race([work, aborted]);
  } finally {
    // A long study must not leave a listener for each batch.
    signal.removeEventListener('abort', stop);
  }
}

interface Done {
  readonly lines: StudiedLines;
  readonly giveBack: () => void;
}

const NOTHING: StudiedLines = { out: '', tunes: 0, failures: [] };

/** What a study says of a tune that could not be read at all, called after its file. */
function failed(
  { first: number, error }: Extract<StudyItem, { readonly error: unknown }>,
  setup: StudySetup,
): StudiedLines {
  const { file } = error.where;
  const id = file === undefined ? undefined : basename(file);
  const out = `${JSON.stringify(failureOf(error, { number, id, digest: studyDigest(setup) }))}\n`;
  return { out, tunes: 1, failures: [{ number, message: error.message }] };
}
