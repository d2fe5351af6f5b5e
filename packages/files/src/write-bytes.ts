import { unwritable } from './unwritable.js';
import { writeWhole } from './write-whole.js';

/**
 * Writes a file, over one that is there, or standard output for `-`. A file is written whole or not
 * at all: on any error what was there stays as it was.
 *
 * @throws ReedplateError `FILE_UNWRITABLE`
 */
export function writeBytes(path: string, bytes: Uint8Array): void {
  if (path === '-') {
    process.stdout.write(bytes);
    return;
  }
  try {
    writeWhole(path, bytes);
  } catch (error) {
    throw unwritable(path, error);
  }
}
