import { existsSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { hashOf, workFiles } from './cache.mjs';
import { ROOT } from './root.mjs';

/** Settings that every test rests on. */
const SETTINGS =
  /^(?:package\.json|pnpm-lock\.yaml|vitest\.config\.ts|tsconfig[^/]*\.json|test\/seed\.setup\.ts)$/u;
const TEST = /^(?:packages\/[^/]+\/(?:src|test)|test|scripts|examples)\/.*\.test\.ts$/u;
const BESIDE_CODE = /^packages\/[^/]+\/(?!node_modules\/).*\.(?!ts$)[a-z]+$/u;

/**
 * Every test file with a hash of what it rests on: the modules it reaches, whatever else lies in the
 * packages these are in, and the settings. A test outside the packages may read anything, so it rests on all.
 *
 * @param {readonly string[]} generated test files that git ignores
 * @returns {Promise<ReadonlyMap<string, string>>}
 */
export async function testHashes(generated) {
  const { default: ts } = await import('typescript');
  const files = workFiles();
  const settings = files.filter((file) => SETTINGS.test(file));
  const data = files.filter((file) => BESIDE_CODE.test(file));
  /** @type {Map<string, readonly string[]>} */
  const imports = new Map();
  /** @param {string} file */
  const importsOf = (file) => {
    const known = imports.get(file);
    if (known !== undefined) return known;
    const { importedFiles } = ts.preProcessFile(readFileSync(ROOT + file, 'utf8'), true, true);
    const found = importedFiles.flatMap(({ fileName }) => fileOf(file, fileName) ?? []);
    imports.set(file, found);
    return found;
  };
  /** @param {string} test */
  const restsOn = (test) => {
    const isOfPackage = test.startsWith('packages/') || test.startsWith('test/generated/');
    if (!isOfPackage) return files;
    const reached = new Set([test]);
    for (const file of reached) for (const next of importsOf(file)) reached.add(next);
    const folders = new Set([...reached].map(packageOf));
    const beside = data.filter((file) => folders.has(packageOf(file)));
    return [...reached, ...beside, ...settings].sort();
  };
  const tests = [...files.filter((file) => TEST.test(file)), ...generated];
  return new Map(tests.map((test) => [test, hashOf(restsOn(test))]));
}

/**
 * A hash of a test and of the file it tests, which stands beside it.
 *
 * @param {string} test
 */
export function ownHash(test) {
  const tested = test.replace(/\.test\.ts$/u, '.ts');
  return hashOf(existsSync(ROOT + tested) ? [test, tested] : [test]);
}

/** @param {string} file */
const packageOf = (file) => file.split('/', 2).join('/');

/**
 * The file of the work tree that an import names; undefined where it is a package of others.
 *
 * @param {string} from
 * @param {string} specifier
 */
function fileOf(from, specifier) {
  const ours = /^(?:@reedplate\/([a-z-]+)|(reedplate))$/u.exec(specifier);
  if (ours !== null) return `packages/${ours[1] ?? ours[2]}/src/index.ts`;
  if (!specifier.startsWith('.')) return undefined;
  const path = posix.join(posix.dirname(from), specifier);
  return [path.replace(/\.js$/u, '.ts'), path].find((file) => existsSync(ROOT + file));
}
