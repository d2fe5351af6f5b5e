import { makeChart } from '@reedplate/form';
import { parseHarp, type TechniqueLevel } from '@reedplate/layout';
import { itemAt, parseKey, ReedplateError } from '@reedplate/pitch';
import {
  findPhrases,
  formatPhrase,
  PHRASE_KINDS,
  type Phrase,
  type PhraseFilter,
  type PhraseKind,
  type PhraseNotPlaced,
  type PlacedPhrase,
  parsePhrase,
  phraseChart,
  placePhrase,
  toPhrase,
} from '@reedplate/practice';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { examples } from '../../shared/examples.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import {
  type PhraseFolderWords,
  readPhraseFolder,
  withPhraseFolder,
} from '../../shared/phrase-folder.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readFormWords } from '../../shared/read-form.js';
import { readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

/** A phrase on a harp, or why it is not on it. */
type Placing = PlacedPhrase | PhraseNotPlaced;

/** What `reedplate phrases --json` prints: the phrases, or with `--harp` each of them on that harp. */
export type PhrasesAnswer = readonly Phrase[] | readonly (PlacedPhrase | PhraseNotPlaced)[];

interface PhrasesWords extends PrintWords, LevelWords, PhraseFolderWords {
  readonly kind?: string;
  readonly position?: string;
  readonly grade?: string;
  readonly mode?: string;
  readonly fromTab?: string;
  readonly harmony: string;
  readonly harp?: string;
  readonly key?: string;
  readonly over?: string;
  readonly bar: string;
}

/** Gives `reedplate phrases` its options and what it does. */
export function setUpPhrases(verb: Command, terminal: Terminal): void {
  withPhraseFolder(withJsonOfHarps(withLevel(verb, 'to be placed for a player with')))
    .argument('[ids...]', 'phrases to show with their tab; without one all are listed')
    .option('--kind <kind>', `list of a kind: ${PHRASE_KINDS.join(', ')}`)
    .option('--position <number>', 'list of a position, 1 to 12; that of --from-tab')
    .option('--grade <number>', 'list up to a grade, 1 to 5')
    .option('--mode <mode>', 'list for songs in major or minor')
    .option('--from-tab <file>', 'read a phrase from tab with rhythm, - for standard input')
    .option('--harmony <bars>', 'chords of --from-tab', 'I7')
    .option('--harp <harp>', 'harp to put the phrases on')
    .option('--key <key>', 'key of the song for --harp')
    .option(
      '--over <form>',
      'form for --harp, by id, bars or file; without it the chords of the phrase',
    )
    .option('--bar <number>', 'bar of the form for --harp', '1')
    .addHelpText(
      'after',
      examples(
        'reedplate phrases --kind turnaround --grade 2',
        'reedplate phrases --phrases-from my-licks',
        'reedplate phrases stair --harp D --key A --over quick-change --bar 5',
      ),
    )
    .action((ids: readonly string[], words: PhrasesWords) => {
      const phrases = readPhrases(ids, words, terminal);
      const isList = ids.length === 0 && words.fromTab === undefined;
      const { harp } = words;
      if (harp === undefined) {
        requireHarp(words);
        const show = isList ? listPhrases : showPhrases;
        printAnswer<PhrasesAnswer>(phrases, words, terminal, (_, page) => show(phrases, page));
        return;
      }
      const placings = phrases.map(placeOn(harp, words, terminal));
      printAnswer<PhrasesAnswer>(placings, words, terminal, (_, page) =>
        showPlacings(phrases, placings, page),
      );
    });
}

function readPhrases(
  ids: readonly string[],
  words: PhrasesWords,
  terminal: Terminal,
): readonly Phrase[] {
  const { fromTab, position, harmony } = words;
  if (fromTab !== undefined) {
    const text = terminal.readText(fromTab);
    const place = position === undefined ? {} : { position: readPosition(position) };
    return [parsePhrase(text, { harmony, id: 'from-tab', ...place })];
  }
  const own = readPhraseFolder(words, terminal);
  if (ids.length > 0) return ids.map((id) => toPhrase(id, { phrases: own }));
  return findPhrases({ ...readFilter(words), ...(own.length > 0 ? { from: own } : {}) });
}

function readFilter({ kind, position, grade, mode }: PhrasesWords): PhraseFilter {
  return {
    ...(kind === undefined ? {} : { kind: kind as PhraseKind }),
    ...(position === undefined ? {} : { position: readPosition(position) }),
    ...(grade === undefined
      ? {}
      : { grade: readWholeNumber(grade, { min: 1, max: 5, what: 'a grade' }) as 5 }),
    ...(mode === undefined ? {} : { mode: mode as 'minor' }),
  };
}

function readPosition(word: string): Phrase['position'] {
  return readWholeNumber(word, { min: 1, max: 12, what: 'a position' }) as Phrase['position'];
}

/** A song without a harp would be passed over in silence. */
function requireHarp({ key, over }: PhrasesWords): void {
  if (key === undefined && over === undefined) return;
  const value = key === undefined ? '--over' : '--key';
  throw new ReedplateError({ code: 'USAGE', value, expected: '--harp to put the phrases on' });
}

/** Puts phrases on a harp, over the form or their own chords in the key of the song. */
function placeOn(harp: string, words: PhrasesWords, terminal: Terminal) {
  const { key, over, bar } = words;
  if (key === undefined) {
    throw new ReedplateError({
      code: 'USAGE',
      value: '--harp',
      expected: '--key of the song with it',
    });
  }
  const song = parseKey(key);
  const level = readLevel(words, terminal);
  const picked = parseHarp(harp);
  const form = over === undefined ? undefined : readFormWords(over, { terminal, key: song });
  return (phrase: Phrase): Placing => {
    const chart = form === undefined ? phraseChart(phrase, song.tonic) : makeChart(form, song);
    const most = { min: 1, max: chart.bars, what: 'a bar' };
    return placePhrase(phrase, { chart, harp: picked, bar: readWholeNumber(bar, most), level });
  };
}

const LEVELS: Readonly<Record<TechniqueLevel, string>> = {
  natural: '',
  bends: 'bends',
  overbends: 'overbends',
};

function listPhrases(phrases: readonly Phrase[], { paint, table }: Page): readonly string[] {
  const rows = phrases.map(({ id, kind, position, grade, level, trains }) => [
    id,
    kind,
    `${position}`,
    `${grade}`,
    LEVELS[level],
    trains,
  ]);
  return [
    paint('heading', count(phrases.length, 'phrase')),
    '',
    ...(rows.length === 0
      ? ['none']
      : table({ head: ['id', 'kind', 'pos', 'grade', 'needs', 'trains'], rows })),
  ];
}

function showPhrases(phrases: readonly Phrase[], page: Page): readonly string[] {
  return phrases.flatMap((phrase) => [...sayPhrase(phrase, page), '']);
}

/** Each phrase as it is written, then where it lies on the harp. */
function showPlacings(
  phrases: readonly Phrase[],
  placings: readonly Placing[],
  page: Page,
): readonly string[] {
  return placings.flatMap((placing, at) => [
    ...sayPhrase(itemAt(phrases, at), page),
    ...sayPlaced(placing),
    '',
  ]);
}

/** What a phrase is, and its tab for a C harp in its position. */
function sayPhrase(phrase: Phrase, { paint }: Page): readonly string[] {
  const { name, kind, position, harmony, feel, grade, trains } = phrase;
  return [
    paint('heading', `${name}: ${kind}, position ${position}, ${feel}, grade ${grade}`),
    ...(trains === '' ? [] : [`trains ${trains}`]),
    harmony,
    formatPhrase(phrase),
  ];
}

function sayPlaced(placed: Placing): readonly string[] {
  if (!placed.playable) {
    return [`not on this harp: it has no tone of ${placed.without.join(', ')} at this level`];
  }
  const others = placed.otherHarmony.map(
    ({ bar, madeFor, found }) =>
      `bar ${bar}: made for ${madeFor}, the chart has ${found ?? 'no chord'}`,
  );
  const changes =
    placed.changes.length === 0
      ? 'as written'
      : `${count(placed.changes.length, 'note')} otherwise than written`;
  return [`bar ${placed.bar} on a harp in ${placed.harp.key}, ${changes}:`, placed.tab, ...others];
}
