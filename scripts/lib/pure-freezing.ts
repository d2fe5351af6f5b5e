import { readFile } from 'node:fs/promises';
import type { Options } from 'tsup';

type Plugin = NonNullable<Options['esbuildPlugins']>[number];

const OURS = /[\\/]packages[\\/][^\\/]+[\\/]src[\\/].*\.ts$/;

/**
 * Marks each freezing whose value is used as free of effects, so that a bundler leaves a frozen table out of
 * a program that does not use it. A statement that freezes what has a name already stays unmarked: it would go.
 */
export const pureFreezing: Plugin = {
  name: 'pure-freezing',
  setup(build) {
    build.onLoad({ filter: OURS }, async ({ path }) => ({
      contents: markFreezing(await readFile(path, 'utf8')),
      loader: 'ts',
    }));
  },
};

/** What stands before an expression whose value goes somewhere: to a name, a field, a caller or a function. */
const VALUE_USED = /(?<=(?:[=(,:?[]|=>|\breturn)\s*)Object\.freeze\(/gu;

/** Source text with its freezings marked. */
export function markFreezing(source: string): string {
  return source.replace(VALUE_USED, '/* @__PURE__ */ Object.freeze(');
}
