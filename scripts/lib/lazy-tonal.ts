import { pathToFileURL } from 'node:url';
import type { Options } from 'tsup';

type Plugin = NonNullable<Options['esbuildPlugins']>[number];

/** What we read of an entry of tonal's dictionaries of chords and scales. */
interface Entry {
  readonly name: string;
  readonly intervals: readonly string[];
  readonly aliases: readonly string[];
}

/** tonal's two dictionaries. */
const DICTIONARIES = /[\\/]@tonaljs[\\/](?:chord-type|scale-type)[\\/]dist[\\/]index\.mjs$/;

/**
 * Takes tonal's dictionaries of chords and scales as tonal gives them, at build time. As published they
 * compute the pitch-class set of every entry on import, which nothing here reads: every program would pay
 * for it, and no bundler could leave them out. All else that a build takes in is tonal's own text.
 */
export const lazyTonal: Plugin = {
  name: 'lazy-tonal',
  setup(build) {
    build.onLoad({ filter: DICTIONARIES }, async ({ path }) => {
      const { all } = (await import(pathToFileURL(path).href)) as { all: () => readonly Entry[] };
      return { contents: dictionaryModule(all()), loader: 'js' };
    });
  },
};

/** A module whose `all` gives a dictionary's entries, in their order, by what we read of them. */
export function dictionaryModule(entries: readonly Entry[]): string {
  const rows = entries.map(({ name, intervals, aliases }) =>
    JSON.stringify([name, intervals.join(' '), ...aliases]),
  );
  return `const rows = [
${rows.join(',\n')}
];
export function all() {
  return rows.map(([name, intervals, ...aliases]) => ({ name, intervals: intervals.split(' '), aliases }));
}
`;
}
