import { availableParallelism } from 'node:os';
import { type KeyName, type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import type { StudySetup } from '../study-setup.js';
import type { StudyLineFailure } from './batch.js';
import { isReaderGone, openOutput } from './output.js';
import { makePace } from './pace.js';
import { openPool } from './pool.js';
import { showProgress } from './progress.js';
import { readBatches } from './read-batches.js';
import { linesDone } from './resume.js';
import { runStudy } from './run-study.js';
import { openSources } from './sources.js';

/** Is told of what a study meets on its way. */
export interface StudyWatcher {
  /** Takes the tunes that could not be read, as they are met. */
  readonly failed: (failures: readonly StudyLineFailure[]) => void;
}

/** How a study of files is run. */
export interface StudyFilesOptions {
  /** File for the results; standard output without it. */
  readonly out?: string | undefined;
  /** Goes on where the file of results ends; default false. */
  readonly resume?: boolean;
  /** Threads; as many as there are cores without it. */
  readonly workers?: number;
  /** Key of tunes in ABC, MIDI and MusicXML that give none. */
  readonly key?: KeyName | undefined;
  /** Which part of MIDI and MusicXML files is the tune; see `SourceOptions`. */
  readonly part?: number | string | undefined;
  readonly watcher?: StudyWatcher;
  /**
   * Ends the study when it is aborted: batches under way are given up, and the file of results keeps the
   * whole lines that were written, so that `resume` goes on from there.
   */
  readonly signal?: AbortSignal;
}

const FILES_OPTIONS: OptionNames<StudyFilesOptions> = {
  out: true,
  resume: true,
  workers: true,
  key: true,
  part: true,
  watcher: true,
  signal: true,
};

/** What a study came to. */
export interface StudyCount {
  readonly tunes: number;
  readonly failures: number;
}

/**
 * Studies the tunes of files and writes a result for each, a line a tune, in the order of the input.
 *
 * @throws ReedplateError `USAGE` where the file of results is there already; `FILE_UNREADABLE`;
 *   `FILE_UNWRITABLE`; `STUDY_INVALID` for results of another setup; `LIST_EMPTY` where no tune could be read;
 *   the reason of the signal where it is aborted
 */
export async function studyFiles(
  tunes: readonly string[],
  setup: StudySetup,
  options: StudyFilesOptions = {},
): Promise<StudyCount> {
  const {
    out,
    resume = false,
    key,
    part,
    workers = availableParallelism(),
    watcher,
    signal,
  } = requireOptions(options, FILES_OPTIONS, 'studyFiles');
  signal?.throwIfAborted();
  const input = openSources(tunes, { key, part });
  const done = resume && out !== undefined ? linesDone(out, setup) : 0;
  const output = openOutput(out, resume);
  const pool = await openPool(workers);
  const progress = await showProgress(input.size);
  const pace = makePace();
  const count = { tunes: 0, failures: 0 };
  try {
    const items = readBatches(input.parts(), done, pace.bytes);
    for await (const studied of runStudy(items, setup, pool, { pace, ...(signal && { signal }) })) {
      await output.write(studied.out);
      count.tunes += studied.tunes;
      count.failures += studied.failures.length;
      watcher?.failed(studied.failures);
      progress.update(input.bytesRead(), count.tunes);
    }
    progress.update(input.size, count.tunes);
  } catch (error) {
    if (!isReaderGone(error)) throw error;
    return { tunes: 0, failures: 0 };
  } finally {
    progress.stop();
    output.close();
    const closed = pool.close();
    // Threads that are at work take their time to end; who aborts does not wait for them.
    if (signal?.aborted !== true) await closed;
  }
  if (done === 0 && count.failures === count.tunes) throw nothingRead(tunes);
  return count;
}

/** A study of nothing is a slip of the name or of the format. */
function nothingRead(tunes: readonly string[]): ReedplateError {
  return new ReedplateError({
    code: 'LIST_EMPTY',
    value: tunes.join(' '),
    expected: 'at least one tune that can be read: one JSON value a line, ABC, MIDI or MusicXML',
  });
}
