import { readAt } from '@reedplate/files';
import { makeHarp, type Tuning } from '@reedplate/layout';
import { type Line, transposeLine } from '@reedplate/line';
import { parseKey, ReedplateError } from '@reedplate/pitch';
import { songKeyOf } from '@reedplate/position';
import {
  openSources,
  readStudyTune,
  type StudyTune,
  type TuningChanges,
  tuningChanges,
} from '@reedplate/study';
import type { Command } from 'commander';
import { count } from '../../shared/count.js';
import { setCsv } from '../../shared/csv.js';
import { examples } from '../../shared/examples.js';
import { withJson } from '../../shared/options.js';
import { type PartWords, readPart, withPart } from '../../shared/part-option.js';
import { type PlayerWords, readPlayer, withPlayerOptions } from '../../shared/player-options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readTuningWord, TUNING_WORD } from '../../shared/read-tuning.js';
import { readList, readNumber, readWholeNumber } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate adapt --json` prints. */
export type AdaptAnswer = TuningChanges;

interface AdaptWords extends PlayerWords, PartWords, PrintWords {
  readonly tuning: string;
  readonly position?: string;
  readonly reeds: string;
  readonly within: string;
  readonly transpose: string;
  readonly missing: string;
  readonly key?: string;
  readonly count: string;
  readonly csv: boolean;
}

/** Gives `reedplate adapt` its options and what it does. */
export function setUpAdapt(verb: Command, terminal: Terminal): void {
  withJson(withPart(withPlayerOptions(verb)))
    .argument('<tunes...>', 'files of tunes, as for reedplate study; - for standard input')
    .option('--tuning <tuning>', `tuning of the harp: ${TUNING_WORD}`, 'standard')
    .option('--position <number>', 'moves each tune to be played in this position')
    .option('--key <key>', 'key of tunes in ABC, MIDI and MusicXML that give none')
    .option('--reeds <number>', 'how many reeds are changed at once: 1, or 2 as well', '1')
    .option('--within <semitones>', 'how far a reed may be raised or lowered', '2')
    .option('--transpose <semitones>', 'moves of each tune, apart by commas: -12,0,12', '0')
    .option('--missing <points>', 'what a note costs that cannot be played', '50')
    .option('--count <number>', 'how many changes to show; --json and --csv give all', '10')
    .option('--csv', 'print the ranking as CSV', false)
    .addHelpText(
      'after',
      examples(
        'reedplate adapt tunes.abc --position 2 --level overbends --transpose=-12,0,12',
        'reedplate adapt tunes.ndjson --tuning natural-minor --reeds 2 --within 1 --csv',
      ),
    )
    .action(async (files: readonly string[], words: AdaptWords) => {
      const tuning = readTuningWord(words.tuning, terminal);
      const options = optionsOf(words, terminal);
      const shown = readWholeNumber(words.count, { min: 1, max: 100_000, what: 'changes' });
      const lines = await linesFor(files, tuning, words);
      const answer: AdaptAnswer = tuningChanges(lines, tuning, options);
      if (words.csv) terminal.out(setCsv(rowsOf(answer)));
      else printAnswer(answer, words, terminal, (all, page) => showAdapt(all, shown, page));
    });
}

function optionsOf(words: AdaptWords, terminal: Terminal) {
  const reeds = readWholeNumber(words.reeds, { min: 1, max: 2, what: 'a number of reeds' });
  return {
    ...readPlayer(words, terminal),
    reeds: reeds as 1 | 2,
    within: readWholeNumber(words.within, { min: 1, max: 12, what: 'semitones' }),
    transpositions: readList(words.transpose).map((word) => readNumber(word, 'semitones')),
    missingCost: readNumber(words.missing, 'points'),
  };
}

/** The lines of all tunes, moved to the position asked for. */
async function linesFor(
  files: readonly string[],
  tuning: Tuning,
  words: AdaptWords,
): Promise<readonly Line[]> {
  const { position } = words;
  const home =
    position === undefined
      ? undefined
      : songKeyOf(makeHarp(tuning.label, { tuning }), readNumber(position, 'a position'));
  const tunes = await readTunes(files, words);
  return tunes.map((tune) =>
    home === undefined
      ? tune.line
      : transposeLine(tune.line, nearest(home.pitchClass - parseKey(tune.key).pitchClass)),
  );
}

/** The nearest move by as many semitones, octaves aside. */
const nearest = (semitones: number): number => ((((semitones + 5) % 12) + 12) % 12) - 5;

async function readTunes(
  files: readonly string[],
  words: AdaptWords,
): Promise<readonly StudyTune[]> {
  const { key } = words;
  const otherwise = key === undefined ? undefined : parseKey(key).name;
  const tunes: StudyTune[] = [];
  let line = 0;
  for await (const part of openSources(files, { key: otherwise, ...readPart(words) }).parts()) {
    if (part instanceof ReedplateError) throw part;
    for (const text of new TextDecoder().decode(part).split('\n').slice(0, -1)) {
      line += 1;
      // A corpus is read whole, so one bad tune ends it, and is named.
      if (text.trim() !== '') tunes.push(readAt({ line }, () => readStudyTune(text)));
    }
  }
  if (tunes.length > 0) return tunes;
  throw new ReedplateError({
    code: 'LIST_EMPTY',
    value: files.join(' '),
    expected: 'at least one tune: one JSON value a line, ABC, MIDI or MusicXML',
  });
}

function rowsOf({ changes }: AdaptAnswer) {
  return changes.map(({ name, cost, effort, missing, saved }, at) => {
    return { rank: at + 1, change: name, cost, effort, missing, saved };
  });
}

function showAdapt(
  { tuning, model, level, lines, unchanged, changes }: AdaptAnswer,
  shown: number,
  { paint, table }: Page,
): readonly string[] {
  const rows = changes
    .slice(0, shown)
    .map(({ name, cost, saved, missing }, at) => [
      `${at + 1}`,
      name,
      cost.toFixed(1),
      `${saved.toFixed(1)} (${sharePercent(saved, unchanged.cost)})`,
      `${missing}`,
    ]);
  const asItIs = ['', 'none', unchanged.cost.toFixed(1), '', `${unchanged.missing}`];
  const tried = `${count(changes.length, 'change')} tried`;
  return [
    paint('heading', `changes of ${tuning} for ${count(lines, 'tune')} (${model}, ${level})`),
    '',
    ...table({ head: ['', 'change', 'cost', 'saved', 'missing'], rows: [asItIs, ...rows] }),
    '',
    paint('aside', `${tried}; cost is effort, and the price of what is missing`),
  ];
}

const sharePercent = (part: number, whole: number): string =>
  whole === 0 ? '0 %' : `${((100 * part) / whole).toFixed(1)} %`;
