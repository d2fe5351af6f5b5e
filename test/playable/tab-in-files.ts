/** Formats that hold tab. */
export const TAB_FORMATS = ['tab', 'abc', 'musicxml'] as const;

/** A format that holds tab. */
export type TabFormat = (typeof TAB_FORMATS)[number];

/** The words of tab in a file, read from its letters alone. */
export function tabInFile(file: string, format: TabFormat): readonly string[] {
  return READERS[format](file);
}

const READERS: Readonly<Record<TabFormat, (file: string) => readonly string[]>> = {
  // Rows of words that begin with a sign or a bracket; chords begin with a letter, a rest is r.
  tab: (file) =>
    file
      .split('\n')
      .filter((row) => !row.startsWith('#'))
      .flatMap((row) => row.split(/[\s|]+/u))
      .filter((word) => /^[(+-]/u.test(word))
      .map((word) => word.replace(/:.*$/u, '')),
  abc: (file) => [...file.matchAll(/"_([^"]*)"/gu)].map(([, word = '']) => word),
  musicxml: (file) =>
    [...file.matchAll(/<text>([^<]*)<\/text>/gu)].map(([, word = '']) =>
      word.replaceAll('&apos;', "'").replaceAll('&#39;', "'"),
    ),
};
