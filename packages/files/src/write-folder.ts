import { existsSync, mkdtempSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { unwritable } from './unwritable.js';
import { writeWhole } from './write-whole.js';

/**
 * Writes a folder of files whole or not at all: beside its place first, then under its name in one step.
 * A folder that holds something is left as it is and refused.
 *
 * @param files what each file holds, by its name
 * @throws ReedplateError `FILE_UNWRITABLE`
 * @example
 * ```ts
 * import { writeFolder } from '@reedplate/files';
 *
 * writeFolder('/nowhere/lesson', new Map()); // throws FILE_UNWRITABLE
 * ```
 */
export function writeFolder(path: string, files: ReadonlyMap<string, Uint8Array>): void {
  if (existsSync(path) && !statSync(path).isDirectory()) {
    throw unwritable(path, Object.assign(new Error('EEXIST'), { code: 'EEXIST' }));
  }
  const beside = folderBeside(path);
  try {
    for (const [name, bytes] of files) writeWhole(join(beside, name), bytes);
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { recursive: true, force: true });
    throw unwritable(path, error);
  }
}

function folderBeside(path: string): string {
  try {
    return mkdtempSync(join(dirname(resolve(path)), '.reedplate-'));
  } catch (error) {
    throw unwritable(path, error);
  }
}
