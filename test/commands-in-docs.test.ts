import { existsSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { readPiece, writePiece } from '@reedplate/interchange';
import { makeStudySetup, studyTune } from '@reedplate/study';
import { describe, expect, test } from 'vitest';
import { RECORDING } from '../packages/cli/src/shared/recording.fixture.js';
import { type Outcome, runWords } from '../packages/cli/src/shared/run-words.fixture.js';
import { ROOT } from '../scripts/lib/root.mjs';

const PAGES = [
  'README.md',
  ...markdownIn('docs'),
  ...readdirSync(`${ROOT}packages`).map((dir) => `packages/${dir}/README.md`),
  ...readdirSync(`${ROOT}examples`).map((dir) => `examples/${dir}/README.md`),
].filter((page) => existsSync(ROOT + page));

function markdownIn(folder: string): readonly string[] {
  return readdirSync(ROOT + folder)
    .filter((file) => file.endsWith('.md'))
    .map((file) => `${folder}/${file}`);
}

/** A command as a page or a help shows it. */
interface Shown {
  readonly where: string;
  readonly text: string;
}

const COMMAND = /^(?:npx |npm run -s )?reedplate (?:-- )?(?=[a-z])/u;
/** In a table, a command that begins with a verb; a bar in it is written as an entity or escaped. */
const CELL = /^\| `([a-z]+ [^`]*|[a-z]+)` \|/u;

function commandsOf(page: string): readonly Shown[] {
  const lines = readFileSync(ROOT + page, 'utf8').split('\n');
  return lines.flatMap((line, at): readonly Shown[] => {
    const where = `${page}:${at + 1}`;
    if (COMMAND.test(line)) return [{ where, text: line }];
    const cell = page === 'packages/cli/README.md' ? CELL.exec(line)?.[1] : undefined;
    return cell === undefined ? [] : [{ where, text: `reedplate ${cell.replaceAll('\\|', '|')}` }];
  });
}

/** The words of a command line up to a pipe, a redirection or a comment, quotes taken off. */
function wordsOf(text: string): readonly string[] {
  const [, rest = ''] = text.split(COMMAND);
  const words = rest.match(/"[^"]*"|'[^']*'|\S+/gu) ?? [];
  const end = words.findIndex((word) => /^(?:\||>|#)/u.test(word));
  return words
    .slice(0, end === -1 ? undefined : end)
    .map((word) => word.replace(/^["']|["']$/gu, ''));
}

const EXAMPLES = `${ROOT}examples/first-blues/`;
const TUNES =
  'X:1\nT:Gate\nM:4/4\nL:1/4\nK:G\nGABc|\nX:2\nK:G\nG|\nX:3\nT:Third\nM:4/4\nL:1/4\nK:G\ndBAG|\n';
/** The tuning that a page shows as a file. */
function mineIn(page: string): string {
  return /```json\n(.*"mine".*)\n```/u.exec(readFileSync(ROOT + page, 'utf8'))?.[1] ?? '';
}

/** Files that examples speak of as a reader's own. */
const OWN_FILES: ReadonlyMap<string, string | Uint8Array> = new Map<string, string | Uint8Array>([
  ['take.json', readFileSync(`${EXAMPLES}take.json`)],
  ['take.mid', readFileSync(`${EXAMPLES}take.mid`)],
  ['take.wav', RECORDING],
  ['track.wav', RECORDING],
  ['in.mid', readFileSync(`${EXAMPLES}take.mid`)],
  ['tunes.abc', TUNES],
  ['mine.json', mineIn('docs/getting-started-researchers.md')],
  ['tune.txt', 'G7 | C7 | G7 | % | C7 | % | G7 | % | D7 | C7 | G7 | D7'],
  ['-', readFileSync(`${EXAMPLES}take.json`)],
  ['own-lick.tab', 'harmony: I7\n\n-2 -3 -4\n'],
]);

const FOLDER = mkdtempSync(join(tmpdir(), 'reedplate-docs-'));
const TUNE = JSON.stringify({
  key: 'G',
  line: { notes: [{ start: 0, duration: 960, pitch: 67 }] },
});

/** Two tunings, so that one can be compared with the other. */
const SETUP = makeStudySetup({ tunings: ['standard', 'raised-fifth-draw'] });
/** Files of studies, which are read from the disk itself. */
const ON_DISK: ReadonlyMap<string, string | Uint8Array> = new Map<string, string | Uint8Array>([
  ['tunes.ndjson', `${TUNE}\n`],
  ['tunes.abc', TUNES],
  ['book.abc', TUNES],
  ['take.mid', readFileSync(`${EXAMPLES}take.mid`)],
  ['sheet.musicxml', writePiece(readPiece(readFileSync(`${EXAMPLES}take.mid`)), 'musicxml')],
  ['results.ndjson', `${JSON.stringify(studyTune(TUNE, 1, SETUP))}\n`],
]);
for (const [name, bytes] of ON_DISK) writeFileSync(join(FOLDER, name), bytes);

const STUDIES: ReadonlySet<string> = new Set(['study', 'summary', 'adapt']);

function bytesOf(path: string): Uint8Array {
  const own = OWN_FILES.get(basename(path)) ?? readFileSync(ROOT + path);
  return typeof own === 'string' ? new TextEncoder().encode(own) : own;
}

/** Where a word of a study's command names a file, its place on the disk; standard input is a file, too. */
function placeOf(word: string, at: number, words: readonly string[]): string {
  if (!STUDIES.has(words[0] ?? '')) return word;
  if (word === '-') return join(FOLDER, 'tunes.ndjson');
  // A study writes no results over those that are there, and resumes none without their manifest.
  if (words[at - 1] === '--out') return join(mkdtempSync(join(FOLDER, 'out-')), word);
  return ON_DISK.has(word) ? join(FOLDER, word) : word;
}

/** Runs a command on the files of the examples; only a study writes, to a folder of its own. */
function run(words: readonly string[]): Promise<Outcome> {
  const onDisk = words.map(placeOf);
  return runWords(onDisk, {
    readBytes: bytesOf,
    readText: (path) => new TextDecoder().decode(bytesOf(path)),
    // A folder of phrases of one's own.
    listFolder: () => ['own-lick.tab'],
    writeBytes: () => {},
    writeFolder: () => {},
  });
}

async function helpOf(verb: string): Promise<readonly Shown[]> {
  const [, examples = ''] = (await run([verb, '--help'])).out.split(/\nExamples?:\n/u);
  return examples
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => COMMAND.test(line))
    .map((text) => ({ where: `${verb} --help`, text }));
}

const VERBS = [...(await run(['--help'])).out.matchAll(/^ {2}([a-z]+) {2,}[a-z]/gmu)]
  .map(([, verb = '']) => verb)
  .filter((verb) => verb !== 'help');

const HELPS: (readonly Shown[])[] = [];
for (const verb of VERBS) HELPS.push(await helpOf(verb));

describe('commands that the documentation shows', () => {
  const shown = PAGES.flatMap(commandsOf);

  test('there are some in the README, for each reader, and for every verb', () => {
    const pages = new Set(shown.map(({ where }) => where.split(':')[0]));
    expect([...pages]).toEqual(
      expect.arrayContaining(['README.md', 'docs/getting-started-instructors.md']),
    );
    const used = new Set(shown.map(({ text }) => wordsOf(text)[0]));
    expect(VERBS.filter((verb) => !used.has(verb))).toEqual([]);
  });

  test.each(shown)('$where runs: $text', async ({ text }) => {
    const { code, err } = await run(wordsOf(text));
    expect(code, err).toBe(0);
  });
});

describe('commands that a help shows', () => {
  const shown = HELPS.flat();

  test('there is one at least for every verb', () => {
    const used = new Set(shown.map(({ where }) => where.split(' ')[0]));
    expect(VERBS.filter((verb) => !used.has(verb))).toEqual([]);
  });

  test.each(shown)('$where runs: $text', async ({ text }) => {
    const { code, err } = await run(wordsOf(text));
    expect(code, err).toBe(0);
  });
});
