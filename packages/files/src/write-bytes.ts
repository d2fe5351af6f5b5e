import { writeFileSync } from 'node:fs';
import { ReedplateError } from '@reedplate/pitch';

/**
 * Writes a file, over one that is there, or standard output for `-`.
 *
 * @throws ReedplateError `FILE_UNWRITABLE`
 */
export function writeBytes(path: string, bytes: Uint8Array): void {
  if (path === '-') {
    process.stdout.write(bytes);
    return;
  }
  try {
    writeFileSync(path, bytes);
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    throw new ReedplateError({
      code: 'FILE_UNWRITABLE',
      value: path,
      expected: `a file that can be written (${REASONS.get(code) ?? code})`,
    });
  }
}

const REASONS: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'its folder is not there'],
  ['EACCES', 'permission is denied'],
  ['EISDIR', 'it is a directory'],
]);
