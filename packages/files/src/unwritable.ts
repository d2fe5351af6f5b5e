import { ReedplateError } from '@reedplate/pitch';
import { systemCode } from './open-file.js';

/** The error of a file that cannot be written, with what the system has against it in words. */
export function unwritable(path: string, error: unknown): ReedplateError {
  return new ReedplateError({
    code: 'FILE_UNWRITABLE',
    value: path,
    expected: `a file that can be written (${whyUnwritten(error)})`,
  });
}

/** What the system has against writing, in words where they are known. */
export function whyUnwritten(error: unknown): string {
  const code = systemCode(error);
  return REASONS.get(code) ?? (code === '' ? 'unknown' : code);
}

const REASONS: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'its folder is not there'],
  ['ENOTDIR', 'its folder is not there'],
  ['EACCES', 'permission is denied'],
  ['EPERM', 'permission is denied'],
  ['EROFS', 'the disk may only be read'],
  ['EISDIR', 'it is a directory'],
  ['ENOSPC', 'the disk is full'],
  ['EDQUOT', 'the disk is full'],
  ['EIO', 'the disk has a fault'],
  ['EEXIST', 'a file of that name is there'],
  ['ENOTEMPTY', 'it holds something already'],
  ['ENAMETOOLONG', 'its name is too long'],
]);
