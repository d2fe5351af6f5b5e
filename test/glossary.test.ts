import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { exportsOfPackages } from '../scripts/lib/exports-of.js';
import { workspacePackages } from '../scripts/lib/packages.mjs';
import { ROOT } from '../scripts/lib/root.mjs';

const GLOSSARY = readFileSync(`${ROOT}docs/glossary.md`, 'utf8');
const PACKAGES = exportsOfPackages();

/** The packages that a row of the glossary gives a word. */
function roomsOf(word: string): readonly string[] {
  const row = GLOSSARY.split('\n').find((line) => /^\| (\w+)/u.exec(line)?.[1] === word);
  return row?.split('|').at(-2)?.trim().split(', ') ?? [];
}

/** What people read, and what they are shown: pages, sources and golden prints. */
const PAGES = ['README.md', 'DEVELOPERS.md', ...filesOf('docs', /^[^/]*\.md$/u)].filter(
  // The bibliography has the words of those who wrote its works.
  (file) => !['docs/glossary.md', 'docs/sources.md'].includes(file),
);
const SOURCES = workspacePackages().flatMap(({ dir }) => [
  ...filesOf(`packages/${dir}/src`, /(?:(?<!\.test|\.fixture)\.ts|golden\.txt)$/u),
  `packages/${dir}/README.md`,
]);

function filesOf(folder: string, pattern: RegExp): readonly string[] {
  if (!existsSync(`${ROOT}${folder}`)) return [];
  return readdirSync(`${ROOT}${folder}`, { recursive: true, encoding: 'utf8' })
    .filter((file) => pattern.test(file))
    .map((file) => `${folder}/${file}`);
}

/** Words that are not used, and the folders in which they mean something else. */
const NOT_USED: readonly (readonly [string, RegExp, readonly string[]])[] = [
  // On a staff a natural is a note without a sharp or a flat.
  ['natural note', /\bnatural notes?\b/iu, ['packages/pitch/', 'packages/interchange/']],
  ['bright major', /\bbright[- ]major\b/iu, []],
  ['traditional blues', /\btraditional (?:blues|players)\b/iu, []],
  // Recognising a form, a chord may contradict another; a colour of text is no shape.
  ['contradicting', /\b(?:contradicting|coloured (?:shape|chord))/iu, ['/form/', 'docs/forms.md']],
  ['to tune a harp', /\btun(?:e|es|ed) (?:a|the|your) harp\b/iu, []],
  ['turn of breath', /\b(?:breath[- ]turns?|turns? of (?:the )?breath|breath turns)\b/iu, []],
  // The sentences of feedback are in chord-tone; what looks at a score hands them on.
  [
    'a remark that is no feedback',
    /\bremarks?\b/iu,
    ['/chord-tone/', '/cli/src/verbs/score/', 'docs/'],
  ],
  ['a set of songs', /\bset of songs\b/iu, []],
];

describe('docs/glossary.md', () => {
  test.each(['score', 'fit', 'effort', 'pick', 'tab', 'event'])(
    'lets names begin with %s in the packages of its row alone',
    (word) => {
      const rooms = roomsOf(word);
      const begins = new RegExp(`^${word}(?![a-z])`, 'iu');
      const found = PACKAGES.flatMap(({ dir, exports }) =>
        exports.filter(({ name }) => begins.test(name.replaceAll('_', ''))).map(() => dir),
      ).filter((dir) => !['reedplate', 'cli', 'study'].includes(dir));
      expect(rooms.length).toBeGreaterThan(0);
      expect(found.filter((dir) => !rooms.includes(dir))).toEqual([]);
    },
  );

  test('lets no exported name tune a harp, call a sheet a score, songs a set or an event a moment', () => {
    const wrong =
      /^tune|^Tuned|(?:Read|Write)Score|^(?:plan)?Set(?:Plan|Song|Step|Options)?$|Moment|Fit(?!Picture|s|Ranking|Harps)$/u;
    const names = PACKAGES.flatMap(({ exports }) => exports.map(({ name }) => name));
    expect(names.filter((name) => wrong.test(name) && name !== 'HarpFit')).toEqual([]);
  });

  test.each(NOT_USED)('finds %s in no page, no source and no golden print', (_, words, except) => {
    const said = [...PAGES, ...SOURCES].filter(
      (file) =>
        !except.some((part) => file.includes(part)) &&
        words.test(readFileSync(`${ROOT}${file}`, 'utf8').replaceAll(/\s*\n[\s*/]*/gu, ' ')),
    );
    expect(said).toEqual([]);
  });
});
