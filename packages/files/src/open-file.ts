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

/** What the system has against a file, in words where they are known. */
export function systemReason(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  if (code === 'ENOENT') return 'there is no such file';
  if (code === 'EACCES') return 'permission is denied';
  return code === '' ? 'it cannot be opened' : code;
}

/** The error of a file that cannot be read. */
export function unreadable(path: string, reason: string): ReedplateError {
  return new ReedplateError({
    code: 'FILE_UNREADABLE',
    value: path,
    expected: `a file that can be read (${reason})`,
  });
}
