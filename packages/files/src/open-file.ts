import { closeSync, fstatSync, openSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';

/**
 * Opens a file for reading.
 *
 * @throws ReedplateError `FILE_UNREADABLE` for what is missing, a directory, or closed to us
 */
export function openFile(path: string): number {
  const file = openOrRefuse(path);
  if (fstatSync(file).isDirectory()) {
    closeSync(file);
    throw unreadable(path, 'it is a directory');
  }
  return file;
}

function openOrRefuse(path: string): number {
  try {
    return openSync(path, 'r');
  } catch (error) {
    throw unreadable(path, systemReason(error));
  }
}

/** What the system has against a file that is read, in words where they are known. */
export function systemReason(error: unknown): string {
  const code = systemCode(error);
  return REASONS.get(code) ?? (code === '' ? 'it cannot be opened' : code);
}

/** The code of an error of the system, such as `ENOENT`; empty for any other error. */
export function systemCode(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

const REASONS: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'there is no such file'],
  ['ENOTDIR', 'there is no such file'],
  ['EACCES', 'permission is denied'],
  ['EPERM', 'permission is denied'],
  ['EISDIR', 'it is a directory'],
  ['ENAMETOOLONG', 'its name is too long'],
  ['ELOOP', 'its links lead in a circle'],
  ['EIO', 'the disk has a fault'],
]);

/** The error of a file that cannot be read. */
export function unreadable(path: string, reason: string): ReedplateError {
  return new ReedplateError({
    code: 'FILE_UNREADABLE',
    value: path,
    expected: `a file that can be read (${reason})`,
  });
}
