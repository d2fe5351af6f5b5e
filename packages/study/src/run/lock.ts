import { closeSync, openSync, readFileSync, renameSync, rmSync, writeSync } from 'node:fs';
import { hostname } from 'node:os';
import { systemCode, unwritable } from '@reedplate/files';
import { ReedplateError } from '@reedplate/pitch';

/** Where the lock of a file of results lies. */
export const lockPath = (results: string): string => `${results}.lock`;

/**
 * Takes a file of results for this process alone; gives what lets it go. A lock whose process has ended, as after
 * a kill, is taken over.
 *
 * @throws ReedplateError `USAGE` where another process has it; `FILE_UNWRITABLE`
 */
export function takeLock(results: string): () => void {
  const path = lockPath(results);
  if (!makeLock(path)) {
    const owner = readOwner(path);
    if (owner === undefined || isRunning(owner)) throw taken(results, path);
    removeStale(path, owner, results);
    if (!makeLock(path)) throw taken(results, path);
  }
  return () => rmSync(path, { force: true });
}

const ownName = (): string => `${process.pid} ${hostname()}\n`;

/** Makes the lock; false where it is there. */
function makeLock(path: string): boolean {
  try {
    const file = openSync(path, 'wx');
    writeSync(file, ownName());
    closeSync(file);
    return true;
  } catch (error) {
    if (systemCode(error) === 'EEXIST') return false;
    throw unwritable(path, error);
  }
}

function readOwner(path: string): string | undefined {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    return undefined;
  }
}

/** Whether the process that wrote a lock still runs; on another host it cannot be known, so it does. */
function isRunning(owner: string): boolean {
  const [, process, host] = /^(\d{1,10}) (.+)\n$/u.exec(owner) ?? [];
  // Killed before it could write its name.
  if (process === undefined) return owner !== '';
  return host !== hostname() || isAlive(Number(process));
}

function isAlive(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return systemCode(error) !== 'ESRCH';
  }
}

/** Moves it away before it is removed: of two that find it, one moves it, and the other must not take the new one. */
function removeStale(path: string, owner: string, results: string): void {
  const away = `${path}.${process.pid}`;
  try {
    renameSync(path, away);
  } catch {
    throw taken(results, path);
  }
  const isSame = readOwner(away) === owner;
  if (!isSame) renameSync(away, path);
  rmSync(away, { force: true });
  if (!isSame) throw taken(results, path);
}

function taken(results: string, path: string): ReedplateError {
  return new ReedplateError({
    code: 'USAGE',
    value: results,
    expected: `results that no other study writes; if none does, remove ${path}`,
  });
}
