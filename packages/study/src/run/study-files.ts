import { availableParallelism } from 'node:os';
import {
  type KeyName,
  type OptionNames,
  ReedplateError,
  requireInteger,
  requireOptions,
} from '@reedplate/pitch';
import { beginManifest, type StudyAsked } from '../manifest.js';
import type { StudySetup } from '../study-setup.js';
import type { StudyLineFailure } from './batch.js';
import { hashInput } from './hash-input.js';
import { holdFailures } from './held-failures.js';
import { keepResults } from './kept-results.js';
import { isReaderGone, openOutput, type StudyOutput } from './output.js';
import { makePace } from './pace.js';
import { openPool } from './pool.js';
import { showProgress } from './progress.js';
import { readBatches } from './read-batches.js';
import type { StudyDone } from './resume.js';
import { runStudy } from './run-study.js';
import { requireShare, type StudyShare } from './share.js';
import { openSources, type StudySources } from './sources.js';

/** Is told of what a study meets on its way. */
export interface StudyWatcher {
  /** Takes the tunes that could not be read, as they are met. */
  readonly failed: (failures: readonly StudyLineFailure[]) => void;
  /** Takes how far the results went that are resumed, before the study goes on. */
  readonly resumed?: (done: StudyDone) => void;
}

/** How a study of files is run. */
export interface StudyFilesOptions {
  /** File for the results; standard output without it. */
  readonly out?: string | undefined;
  /** Goes on where the file of results ends; default false. */
  readonly resume?: boolean;
  /** Threads; as many as there are cores without it. */
  readonly workers?: number;
  /** Number of the first tune of this input, from 1, where it is a part of a longer one; default 1. */
  readonly first?: number;
  /** The part that this process does of a study shared out to several; default all. */
  readonly share?: StudyShare | undefined;
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
  first: true,
  share: true,
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
 * Studies the tunes of files and writes a result for each, a line a tune, in the order of the input. Beside a file
 * of results lies its manifest, `<results>.manifest.json`; while it is written, a lock, `<results>.lock`.
 *
 * @returns what was done now, without what was done before
 * @throws ReedplateError `USAGE` where the file of results is there already, another process writes it, or
 *   standard input is to be resumed; `FILE_UNREADABLE`; `FILE_UNWRITABLE`; `STUDY_INVALID` for results of another
 *   setup, input or options; `NUMBER_RANGE`; `LIST_EMPTY` where no tune could be read; the reason of the signal where
 *   it is aborted
 */
export async function studyFiles(
  tunes: readonly string[],
  setup: StudySetup,
  options: StudyFilesOptions = {},
): Promise<StudyCount> {
  const {
    out,
    resume = false,
    signal,
    ...how
  } = requireOptions(options, FILES_OPTIONS, 'studyFiles');
  const { first = 1, share, key, part } = how;
  signal?.throwIfAborted();
  const asked = askedOf({ first, share, key, part });
  const input = openSources(tunes, { key, part });
  const kept = keepResults(out, resume, () => beginManifest(setup, hashInput(tunes), asked));
  try {
    const { done } = kept;
    if (done.number > 0 || done.cut > 0) how.watcher?.resumed?.(done);
    const output = openOutput(out, resume);
    kept.begin();
    const count = await studyInto(output, input, setup, { ...how, signal, first, done });
    if (count === undefined) return { tunes: 0, failures: 0 };
    if (done.number === 0 && isNothing(count, share)) throw nothingRead(tunes, count.told);
    kept.complete(count);
    return { tunes: count.tunes, failures: count.failures };
  } finally {
    kept.letGo();
  }
}

/** What is asked besides the setup, checked; what is not asked is left out. */
function askedOf({
  first = 1,
  share,
  key,
  part,
}: Pick<StudyFilesOptions, 'first' | 'share' | 'key' | 'part'>): StudyAsked {
  requireInteger(first, { min: 1, what: 'the number of the first tune' });
  return {
    ...(key === undefined ? {} : { key }),
    ...(part === undefined ? {} : { part }),
    ...(first === 1 ? {} : { first }),
    ...(share === undefined ? {} : { share: requireShare(share) }),
  };
}

interface StudyRun extends Pick<StudyFilesOptions, 'workers' | 'watcher' | 'share'> {
  readonly signal: AbortSignal | undefined;
  readonly first: number;
  readonly done: StudyDone;
}

interface RunCount extends StudyCount {
  /** The first failure, where no tune could be read. */
  readonly told: StudyLineFailure | undefined;
}

/** Studies what is left to do; `undefined` where the reader of standard output has gone away. */
async function studyInto(
  output: StudyOutput,
  input: StudySources,
  setup: StudySetup,
  { workers = availableParallelism(), watcher, signal, share, first, done }: StudyRun,
): Promise<RunCount | undefined> {
  const pool = await openPool(workers);
  const progress = await showProgress(input.size);
  const pace = makePace();
  const count = { tunes: 0, failures: 0 };
  const held = holdFailures(watcher?.failed, done.tunes > done.failures);
  try {
    const items = readBatches(input.parts(), done.number, pace.bytes, first);
    const how = { pace, share, ...(signal && { signal }) };
    for await (const studied of runStudy(items, setup, pool, how)) {
      await output.write(studied.out);
      count.tunes += studied.tunes;
      count.failures += studied.failures.length;
      held.add(studied.failures, count.tunes > count.failures);
      progress.update(input.bytesRead(), count.tunes);
    }
    progress.update(input.size, count.tunes);
    return { ...count, told: held.first() };
  } catch (error) {
    if (!isReaderGone(error)) throw error;
    return undefined;
  } finally {
    progress.stop();
    output.close();
    const closed = pool.close();
    // Threads that are at work take their time to end; who aborts does not wait for them.
    if (signal?.aborted !== true) await closed;
  }
}

/** A part may have no tune of its own, where there are fewer tunes than parts. */
function isNothing({ tunes, failures }: StudyCount, share: StudyShare | undefined): boolean {
  return failures === tunes && !(tunes === 0 && share !== undefined && share.part > 1);
}

/** A study of nothing is a slip of the name or of the format. */
function nothingRead(tunes: readonly string[], told: StudyLineFailure | undefined): ReedplateError {
  const why = told === undefined ? '' : `; of the first that is there: ${told.message}`;
  return new ReedplateError({
    code: 'LIST_EMPTY',
    value: tunes.join(' '),
    expected: `at least one tune that can be read: one JSON value a line, ABC, MIDI or MusicXML${why}`,
  });
}
