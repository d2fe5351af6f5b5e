import { existsSync, statSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';
import type { StudyManifest } from '../manifest.js';
import { takeLock } from './lock.js';
import { requireSameStudy, writeManifest } from './manifest-file.js';
import { resultsDone, type StudyDone } from './resume.js';

/** A file of results while a study writes it: held by a lock, with its manifest beside it. */
export interface KeptResults {
  /** What was done before. */
  readonly done: StudyDone;
  /** Writes the manifest of a study that is not finished. */
  readonly begin: () => void;
  /** Writes the manifest of all that is done now; takes what was done besides. */
  readonly complete: (count: Pick<StudyDone, 'tunes' | 'failures'>) => void;
  readonly letGo: () => void;
}

const NOTHING_DONE: StudyDone = { number: 0, tunes: 0, failures: 0, cut: 0 };

const nothing = (): void => {};

const NOT_KEPT: KeptResults = {
  done: NOTHING_DONE,
  begin: nothing,
  complete: nothing,
  letGo: nothing,
};

/**
 * Takes the file of results of a study, and says how far it goes where it is to be resumed. Standard output and
 * devices keep nothing.
 *
 * @throws ReedplateError as `studyFiles`
 */
export function keepResults(
  out: string | undefined,
  resume: boolean,
  describe: () => StudyManifest,
): KeptResults {
  if (out === undefined || (existsSync(out) && !statSync(out).isFile())) return NOT_KEPT;
  const letGo = takeLock(out);
  try {
    const manifest = describe();
    const done = resume ? doneBefore(out, manifest) : NOTHING_DONE;
    return {
      done,
      letGo,
      begin: () => writeManifest(out, manifest),
      complete: ({ tunes, failures }) =>
        writeManifest(out, {
          ...manifest,
          isComplete: true,
          tunes: done.tunes + tunes,
          failures: done.failures + failures,
        }),
    };
  } catch (error) {
    letGo();
    throw error;
  }
}

/** How far results go that are to be resumed; nothing where there are none yet. */
function doneBefore(out: string, manifest: StudyManifest): StudyDone {
  const once = manifest.input.find(({ sha256 }) => sha256 === null);
  if (once !== undefined) {
    const expected =
      'a file: what can be read but once is not known to be the same, and is not resumed';
    throw new ReedplateError({ code: 'USAGE', value: once.file, expected });
  }
  if (!existsSync(out) || statSync(out).size === 0) return NOTHING_DONE;
  requireSameStudy(out, manifest);
  return resultsDone(out, manifest.digest);
}
