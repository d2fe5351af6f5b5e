import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { ROOT } from './root.mjs';

// What has passed is remembered by a hash of all that it rests on, and is not run again until that changes.
const FOLDER = `${ROOT}node_modules/.cache/reedplate`;

/**
 * The files of the work tree, those that git ignores left out, as paths from the root.
 *
 * @returns {readonly string[]}
 */
export function workFiles() {
  const args = ['ls-files', '--cached', '--others', '--exclude-standard', '-z'];
  const out = execFileSync('git', args, { cwd: ROOT, encoding: 'utf8', maxBuffer: 1 << 26 });
  return [...new Set(out.split('\0'))]
    .filter((file) => file !== '' && existsSync(ROOT + file))
    .sort();
}

/** @type {Map<string, string>} */
const hashes = new Map();

/**
 * One hash over the names and contents of files, and over the Node that runs.
 *
 * @param {readonly string[]} files
 */
export function hashOf(files) {
  const whole = createHash('sha256').update(process.version);
  for (const file of files) {
    const known = hashes.get(file);
    const hash =
      known ??
      createHash('sha256')
        .update(readFileSync(ROOT + file))
        .digest('hex');
    if (known === undefined) hashes.set(file, hash);
    whole.update(`${file}\0${hash}\0`);
  }
  return whole.digest('hex');
}

/**
 * What was remembered under a name; an empty object where nothing was, or what is there cannot be read.
 *
 * @param {string} name
 * @returns {Record<string, string>}
 */
export function recall(name) {
  try {
    return JSON.parse(readFileSync(`${FOLDER}/${name}.json`, 'utf8'));
  } catch {
    return {};
  }
}

/**
 * @param {string} name
 * @param {Record<string, string>} what
 */
export function remember(name, what) {
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(`${FOLDER}/${name}.json`, JSON.stringify(what, null, 1));
}

/**
 * Work that is left out while the files it looks at are those it last passed on.
 *
 * @param {string} name
 * @param {RegExp} looksAt which files it looks at, by path from the root
 * @param {() => unknown} work
 * @returns {() => Promise<void>}
 */
export function unlessPassed(name, looksAt, work) {
  return async () => {
    hashes.clear();
    const hash = hashOf(workFiles().filter((file) => looksAt.test(file)));
    if (recall(name).hash === hash) {
      console.log('nothing it looks at has changed since it last passed');
      return;
    }
    await work();
    remember(name, { hash });
  };
}
