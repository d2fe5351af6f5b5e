import { ReedplateError } from '@reedplate/pitch';

/** The error of a file that cannot be written, with what the system has against it in words. */
export function unwritable(path: string, error: unknown): ReedplateError {
  const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
  return new ReedplateError({
    code: 'FILE_UNWRITABLE',
    value: path,
    expected: `a file that can be written (${REASONS.get(code) ?? code})`,
  });
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
]);
