import type { Citation } from './collect.js';
import type { Source, SourceKind } from './source.js';

const HEADINGS: ReadonlyMap<SourceKind, string> = new Map([
  ['textbook', 'Textbooks'],
  ['paper', 'Papers'],
  ['standard', 'Standards'],
  ['encyclopaedia', 'Encyclopaedias'],
  ['article', 'Articles'],
  ['post', 'Letters to lists and forums'],
  ['wiki', 'Wiki pages'],
  ['program', 'Programs we are compared with'],
  ['practice', 'Common practice'],
  ['memory', 'From memory'],
  ['computed', 'Computed'],
]);

const INTRODUCTION = `# Sources

Everything that the tests of facts rest on: author, title, year, where in it, an address where there is
one, what is taken from it, and the tests that check it. Written by \`npm run sources\` from the
bibliography in \`test/sources\` and from the tests; a test fails where this page is stale, where a test
of facts names no source, and where a source is not used. The command also counts the cases.

What was read only in part is marked so. Wiki pages and letters were read in stored copies, most of which
carry no date: a year or an edition stands where the copy has one. Where two sources disagree, both are
kept, and a note says which we follow.
`;

/** The bibliography as a page. */
export function sourcesPage(sources: readonly Source[], citations: readonly Citation[]): string {
  const sections = [...HEADINGS].flatMap(([kind, heading]) => {
    const rows = sources.filter((source) => source.kind === kind);
    return rows.length === 0 ? [] : [`## ${heading}`, ...rows.map((row) => entry(row, citations))];
  });
  return `${[INTRODUCTION.trim(), ...sections].join('\n\n')}\n`;
}

function entry(source: Source, citations: readonly Citation[]): string {
  const { id, author, title, year, where, address, note } = source;
  const head = [author, `*${title}*`, year, where].filter(
    (part) => part !== undefined && part !== '',
  );
  const uses = citations.filter((citation) => citation.source === id);
  const facts = [...new Set(uses.map(({ file, facts }) => `  - ${facts}: \`${file}\``))];
  return [
    `- **${id}**: ${head.join(', ')}.${address === undefined ? '' : ` <${address}>`}`,
    ...(note === undefined ? [] : [`  ${note}`]),
    ...facts,
  ].join('\n');
}
