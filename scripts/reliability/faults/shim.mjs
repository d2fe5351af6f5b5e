import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

// Preloaded into the command: the n-th call of one kind that would change a disk fails as a faulty disk makes
// it fail, or ends the process there, as a kill does. FAULT="writeSync 1 ENOSPC"
const [name = '', place = '1', code = ''] = (process.env.FAULT ?? '').split(' ');
/** @type {Record<string, (...given: any[]) => any>} */
const calls = /** @type {any} */ (fs);
const real = calls[name];
let met = 0;

/** @param {any[]} given */
const faulty = (...given) => {
  if (real === undefined) throw new Error(`no call ${name}`);
  if (!changesDisk(given)) return real(...given);
  met += 1;
  if (met !== Number(place)) return real(...given);
  if (name === 'writeSync' && code !== 'EACCES') writeHalf(given);
  if (code === 'KILL') process.kill(process.pid, 'SIGKILL');
  throw Object.assign(new Error(`${code}: ${name}`), { code, errno: -1, syscall: name });
};
calls[name] = faulty;
syncBuiltinESMExports();

/**
 * Files are opened for reading too, and standard streams are no disk.
 *
 * @param {any[]} given
 */
function changesDisk([first, flags]) {
  if (name === 'openSync') return typeof flags === 'string' && flags !== 'r';
  if (name === 'renameSync' || name === 'mkdtempSync') return true;
  return typeof first === 'number' && first > 2 && fs.fstatSync(first).isFile();
}

/**
 * A full disk takes a part before it refuses.
 *
 * @param {any[]} given
 */
function writeHalf([file, bytes, at = 0]) {
  const rest = bytes.subarray(at);
  real?.(file, rest, 0, Math.floor(rest.length / 2));
}
