import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
  fchownSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  type Stats,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * Writes a file whole or not at all: beside its place first, down to the disk, then under its name in
 * one step. On any error the file that was there is untouched, and what was begun is taken away.
 * Devices and pipes have nothing to keep, and are written as they are.
 *
 * @throws what the system throws
 */
export function writeWhole(path: string, bytes: Uint8Array): void {
  const before = statSync(path, { throwIfNoEntry: false });
  if (before === undefined) replace(path, bytes, undefined);
  else if (before.isFile()) {
    // A file that may not be written is not replaced either, though its folder would allow it.
    accessSync(path, constants.W_OK);
    // Through a link the file that it leads to is replaced, and the link stays.
    replace(realpathSync(path), bytes, before);
  } else writeFileSync(path, bytes);
}

function replace(path: string, bytes: Uint8Array, before: Stats | undefined): void {
  const beside = nameBeside(path);
  // Fails where the name is taken, so that nothing of another program is written over.
  const file = openSync(beside, 'wx', 0o666);
  try {
    try {
      if (before !== undefined) keepOwnerAndMode(file, before);
      writeAll(file, bytes);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(beside, path);
  } catch (error) {
    rmSync(beside, { force: true });
    throw error;
  }
  syncFolder(dirname(path));
}

/** Tells apart files that one process writes beside each other: nothing is kept of them. */
let written = 0;

/** Short, since a name near the longest that a disk allows would leave no room for more. */
function nameBeside(path: string): string {
  written += 1;
  return join(dirname(path), `.reedplate-${process.pid}-${written}.tmp`);
}

function keepOwnerAndMode(file: number, { uid, gid, mode }: Stats): void {
  try {
    fchownSync(file, uid, gid);
  } catch {
    // Only the owner of the machine may give files away; the writer's own they are then.
  }
  fchmodSync(file, mode & 0o7777);
}

/** Writes all bytes, however many the system takes at a time. */
export function writeAll(file: number, bytes: Uint8Array): void {
  for (let at = 0; at < bytes.length; ) at += writeSync(file, bytes, at);
}

/** Makes the new name last through a loss of power; some systems have no way to. */
function syncFolder(folder: string): void {
  try {
    const file = openSync(folder, 'r');
    try {
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
  } catch {
    // The file is whole under its name: that is all that was promised.
  }
}
