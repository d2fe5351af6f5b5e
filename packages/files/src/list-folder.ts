import { readdirSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';
import { systemReason } from './open-file.js';

/** Most files of a folder that are listed: whoever names their home folder by mistake is told so. */
const MOST_FILES = 5000;

/**
 * The names of the files in a folder, in the order of their letters, the same on every machine; folders within it
 * and hidden files are left out.
 *
 * @throws ReedplateError `FILE_UNREADABLE` for what is missing, no folder, or closed to us; `FILE_TOO_LARGE` for one
 *   of more than 5000 files
 * @example
 * ```ts
 * import { listFolder } from '@reedplate/files';
 *
 * listFolder('/nowhere'); // throws FILE_UNREADABLE
 * ```
 */
export function listFolder(path: string): readonly string[] {
  const names = entriesOf(path)
    .filter((entry) => !entry.isDirectory() && !entry.name.startsWith('.'))
    .map(({ name }) => name);
  if (names.length > MOST_FILES) {
    throw new ReedplateError({
      code: 'FILE_TOO_LARGE',
      value: path,
      expected: `a folder of at most ${MOST_FILES} files`,
    });
  }
  return Object.freeze(names.sort((a, b) => (a < b ? -1 : 1)));
}

function entriesOf(path: string) {
  try {
    return readdirSync(path, { withFileTypes: true });
  } catch (error) {
    const reason =
      error instanceof Error && 'code' in error && error.code === 'ENOTDIR'
        ? 'it is no folder'
        : systemReason(error).replace('no such file', 'no such folder');
    throw new ReedplateError({
      code: 'FILE_UNREADABLE',
      value: path,
      expected: `a folder that can be read (${reason})`,
    });
  }
}
