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

/** What stands between the fields of an entry; tonal's names hold neither this nor the end of a line. */
const BETWEEN = '|';
/** A sign for each interval, from `a` on. */
const FIRST_SIGN = 97;

/**
 * A module whose `all` gives a dictionary's entries, in their order, by what we read of them: a line for
 * each, its intervals a letter each, since every program that names a chord takes the text in.
 */
export function dictionaryModule(entries: readonly Entry[]): string {
  const intervals = [...new Set(entries.flatMap((entry) => entry.intervals))];
  const signOf = (interval: string): string =>
    String.fromCharCode(FIRST_SIGN + intervals.indexOf(interval));
  const lines = entries.map((entry) =>
    [entry.name, entry.intervals.map(signOf).join(''), ...entry.aliases].join(BETWEEN),
  );
  return `const intervals = ${JSON.stringify(intervals.join(' '))};
const lines = ${JSON.stringify(lines.join('\n'))};
export function all() {
  const names = intervals.split(' ');
  return lines.split('\\n').map((line) => {
    const [name, signs, ...aliases] = line.split('${BETWEEN}');
    return { name, intervals: [...signs].map((sign) => names[sign.charCodeAt(0) - ${FIRST_SIGN}]), aliases };
  });
}
`;
}
