import { readFile } from 'node:fs/promises';
import type { Options } from 'tsup';

type Plugin = NonNullable<Options['esbuildPlugins']>[number];

/** tonal's two dictionaries: the statements that fill them on import, and the function we call. */
const DICTIONARIES = /[\\/]@tonaljs[\\/](?:chord-type|scale-type)[\\/]dist[\\/]index\.mjs$/;
const FILLING = /^data_default\.forEach\(\n[\s\S]*?\n\);\n(?:dictionary\.sort\(.*\);\n)?/mu;
const ALL = 'function all() {\n';
const EXPORTS = /^export \{\n[\s\S]*?\n\};\n/mu;

/**
 * Makes tonal's dictionaries of chords and scales fill when they are first asked for. As published
 * they fill on import, so that every program pays for them and no bundler can leave them out. All
 * else that a build takes in is tonal's own text.
 */
export const lazyTonal: Plugin = {
  name: 'lazy-tonal',
  setup(build) {
    build.onLoad({ filter: DICTIONARIES }, async ({ path }) => {
      const contents = fillLate(await readFile(path, 'utf8'));
      if (contents !== undefined) return { contents, loader: 'js' };
      return { errors: [{ text: `${path} is not as lazy-tonal.ts expects it` }] };
    });
  },
};

/**
 * A dictionary's module, made to fill late; `undefined` where it is not as expected. Only `all` is
 * kept: it is all that we call, and the rest would find the dictionary empty.
 */
export function fillLate(text: string): string | undefined {
  const [filling] = FILLING.exec(text) ?? [];
  if (filling === undefined || !text.includes(ALL) || !EXPORTS.test(text)) return undefined;
  return text
    .replace(filling, () => `function fill() {\n${filling}}\n`)
    .replace(ALL, () => `${ALL}  if (dictionary.length === 0) fill();\n`)
    .replace(EXPORTS, () => 'export { all };\n');
}
