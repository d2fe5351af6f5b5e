import { isBuiltin } from 'node:module';
import type { Options } from 'tsup';

type Plugin = NonNullable<Options['esbuildPlugins']>[number];

const NAMESPACE = 'node-by-import';

/** Others ask for Node's modules only where they are there, so that they run in a browser too. */
const COMMANDER = /[\\/]commander[\\/]/;

/** Modules that are not taken from Node by their names. */
const OTHERWISE: ReadonlyMap<string, string> = new Map([
  // It is a global, and the names of its module lack what it inherits.
  ['process', 'module.exports = globalThis.process;'],
  // What no verb of ours is: a program of its own, which another process runs.
  [
    'child_process',
    "export function spawn() { throw new Error('No verb is a program of its own.'); }",
  ],
]);

/**
 * Lets commander, a CommonJS library that the command takes in, import Node's modules, so that a module of ours
 * needs no `require`; the one that starts processes is left out, since nothing here calls it.
 */
export const nodeByImport: Plugin = {
  name: 'node-by-import',
  setup(build) {
    build.onResolve({ filter: /^[\w:/]+$/ }, ({ path, kind, importer }) =>
      kind === 'require-call' && isBuiltin(path) && COMMANDER.test(importer)
        ? { path: path.replace(/^node:/, ''), namespace: NAMESPACE }
        : undefined,
    );
    build.onLoad({ filter: /./, namespace: NAMESPACE }, ({ path }) => ({
      contents: OTHERWISE.get(path) ?? `export * from 'node:${path}';`,
      loader: 'js',
    }));
  },
};
