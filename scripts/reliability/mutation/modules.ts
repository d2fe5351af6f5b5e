import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { compileFunction } from 'node:vm';
import { transformSync } from 'esbuild';
import { ROOT } from '../../lib/root.mjs';

// Modules of the tree, each compiled once and run again as often as is asked, one of them in changed text.
// A runner of tests that starts anew for each change takes seconds for it; this takes milliseconds.

type Exports = Record<string, unknown>;
type Run = (exports: Exports, require: (name: string) => unknown, module: object) => void;

/** Where a name leads, seen from a file: a file of the tree, or a package outside. */
function fileOf(name: string, from: string): string | undefined {
  if (name.startsWith('.')) return resolve(dirname(from), name).replace(/\.js$/u, '.ts');
  const [, own] = /^(?:@reedplate\/)?([a-z-]+)$/u.exec(name) ?? [];
  const isOurs = own !== undefined && (name.startsWith('@reedplate/') || own === 'reedplate');
  return isOurs ? `${ROOT}packages/${own}/src/index.ts` : undefined;
}

function compile(file: string, text: string): Run {
  const url = JSON.stringify(pathToFileURL(file).href);
  const { code } = transformSync(text, {
    loader: file.endsWith('.json') ? 'json' : 'ts',
    format: 'cjs',
    target: 'node20',
    define: { 'import.meta.url': url },
    supported: { 'dynamic-import': false },
  });
  // A module is strict: what is frozen there says so when it is assigned to.
  const strict = `'use strict';${code}`;
  return compileFunction(strict, ['exports', 'require', 'module'], { filename: file }) as Run;
}

/** A file whose text is another than on the disk. */
export interface Changed {
  readonly file: string;
  readonly text: string;
}

/** What a file exports, once it has begun to run. */
interface Loaded {
  readonly exports: Exports;
}

/** Loads files of the tree. */
export interface Modules {
  /** Runs a test file and all that it rests on, anew. */
  readonly loadAnew: (test: string) => void;
  /** Runs a test file; what it rests on is run where that was not done before. */
  readonly load: (test: string) => void;
  /** The same for a test file that was loaded before, but what rests on a changed file is run anew. */
  readonly loadChanged: (test: string, changed: Changed) => void;
}

/**
 * @param standIns modules from outside that are replaced, by name
 * @param textOf what to compile for a file
 */
export function makeModules(
  standIns: ReadonlyMap<string, unknown>,
  textOf = (file: string) => readFileSync(file, 'utf8'),
): Modules {
  const compiled = new Map<string, Run>();
  const needs = new Map<string, Set<string>>();
  const kept = new Map<string, Loaded>();

  const restsOn = (file: string, other: string, seen = new Set<string>()): boolean => {
    if (file === other) return true;
    if (seen.has(file)) return false;
    seen.add(file);
    return [...(needs.get(file) ?? [])].some((next) => restsOn(next, other, seen));
  };

  const runOf = (file: string): Run => {
    const run = compiled.get(file) ?? compile(file, textOf(file));
    compiled.set(file, run);
    return run;
  };

  /** Runs a file; what it needs is looked for among what was loaded, which grows. */
  const run = (file: string, loaded: (file: string) => Map<string, Loaded>, changed?: Changed) => {
    const known = loaded(file).get(file);
    if (known !== undefined) return known.exports;
    const module = { exports: {} };
    loaded(file).set(file, module);
    const need = (name: string): unknown => {
      if (standIns.has(name)) return standIns.get(name);
      const other = fileOf(name, file);
      if (other === undefined) return createRequire(file)(name);
      needs.set(file, (needs.get(file) ?? new Set()).add(other));
      return run(other, loaded, changed);
    };
    const body = file === changed?.file ? compile(file, changed.text) : runOf(file);
    body(module.exports, need, module);
    return module.exports;
  };

  return {
    loadAnew(test) {
      const fresh = new Map<string, Loaded>();
      run(test, () => fresh);
    },
    load(test) {
      kept.delete(test);
      run(test, () => kept);
    },
    loadChanged(test, changed) {
      const fresh = new Map<string, Loaded>();
      const isFresh = (file: string) => file === test || restsOn(file, changed.file);
      run(test, (file) => (isFresh(file) ? fresh : kept), changed);
    },
  };
}
