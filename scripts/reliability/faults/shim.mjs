import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

// Preloaded into the command: the n-th call of one kind that would change a disk fails as a faulty disk makes
// it fail, or ends the process there, as a kill does. FAULT="writeSync 1 ENOSPC"
const [name = '', place = '1', code = ''] = (process.env.FAULT ?? '').split(' ');
const real = fs[name];
let calls = 0;

fs[name] = (...given) => {
  if (!changesDisk(given)) return real(...given);
  calls += 1;
  if (calls !== Number(place)) return real(...given);
  if (name === 'writeSync' && code !== 'EACCES') writeHalf(given);
  if (code === 'KILL') process.kill(process.pid, 'SIGKILL');
  throw Object.assign(new Error(`${code}: ${name}`), { code, errno: -1, syscall: name });
};
syncBuiltinESMExports();

/** Files are opened for reading too, and standard streams are no disk. */
function changesDisk([first, flags]) {
  if (name === 'openSync') return typeof flags === 'string' && flags !== 'r';
  if (name === 'renameSync') return true;
  return typeof first === 'number' && first > 2 && fs.fstatSync(first).isFile();
}

/** A full disk takes a part before it refuses. */
function writeHalf([file, bytes, at = 0]) {
  const rest = bytes.subarray(at);
  real(file, rest, 0, Math.floor(rest.length / 2));
}
