import {
  PLAYING_STYLES,
  type PlayingStyle,
  type ProgressReport,
  progressOf,
  type Score,
  type ScoreOptions,
  scoreLine,
} from '@reedplate/chord-tone';
import { ReedplateError } from '@reedplate/pitch';
import type { Command } from 'commander';
import { type ChartForLineWords, readChartFor } from '../../shared/chart-for-line.js';
import { withChartForLineOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type MaybeHarpWords,
  readMaybeHarp,
  withMaybeHarpOptions,
} from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import { type PartWords, withPart } from '../../shared/part-option.js';
import { type PrintWords, printAnswer } from '../../shared/print.js';
import { type RecordingWords, withRecordingOptions } from '../../shared/recording-options.js';
import type { Terminal } from '../../terminal.js';
import { type ReadTake, readTake } from './read-take.js';
import { type NextGround, showNext } from './show-next.js';
import { showProgress } from './show-progress.js';
import { showScore, showWhy } from './show-score.js';

/** What `reedplate score --json` prints: the score of a take, or of several takes and how they get better. */
export type ScoreAnswer = Score | ProgressReport;

interface ScoreWords
  extends ChartForLineWords,
    LevelWords,
    MaybeHarpWords,
    PartWords,
    PrintWords,
    RecordingWords {
  readonly style?: string;
  readonly swing: string;
  readonly latency: string;
  readonly countIn?: string;
  readonly bars?: string;
  readonly why: boolean;
}

/** Gives `reedplate score` its options and what it does. */
export function setUpScore(verb: Command, terminal: Terminal): void {
  const asked = withPart(withMaybeHarpOptions(withChartForLineOptions(verb), HARP));
  withJsonOfHarps(withRecordingOptions(withLevel(asked, 'what suggestions may ask for')))
    .argument(
      '<takes...>',
      'files of takes: recordings as WAV, or lines as JSON, MIDI, MusicXML, ABC or tab; - for standard input',
    )
    .option(
      '--style <style>',
      `what is judged to clash: ${PLAYING_STYLES.join(', ')}; that of the key without it`,
    )
    .option(
      '--swing <ratio>',
      'long to short part of the beat, 1 (even) to 4, or estimate',
      'estimate',
    )
    .option(
      '--latency <time>',
      'how late the whole take lies: milliseconds as 80ms, ticks (960 to the quarter note), or estimate',
      '0',
    )
    .option(
      '--count-in <bars>',
      'bars counted in before the take begins; those of the file without it',
    )
    .option('--bars <range>', 'bars to judge, as 5-8 or 5; all without it')
    .option('--why', 'also how the total comes about, and why each note counts as it does', false)
    .addHelpText('after', `\n${TERMS.join('\n')}`)
    .addHelpText(
      'after',
      examples(
        'reedplate score take.json --form quick-change --key G --harp C',
        'reedplate score take.wav --tempo 96 --form quick-change --key G --harp C',
        'reedplate score take.json --form quick-change --key G --bars 5-8 --why',
        'reedplate score take.json --key Am --style minor --latency estimate',
      ),
    )
    .action((files: readonly string[], words: ScoreWords) => score(files, words, terminal));
}

async function score(
  files: readonly string[],
  words: ScoreWords,
  terminal: Terminal,
): Promise<void> {
  // A take may be tablature, which the harp gives its notes.
  const harp = readMaybeHarp(words, terminal);
  const options = { ...readScoreOptions(words, terminal), ...harp };
  const takes: { readonly read: ReadTake; readonly score: Score }[] = [];
  for (const file of files) {
    const read = await readTake(file, words, terminal, harp);
    const { line } = read.piece;
    const chart = readChartFor(line, words, terminal, 1);
    const { playedOnHarp } = read;
    takes.push({ read, score: scoreLine(line, chart, { ...options, playedOnHarp }) });
  }
  const [{ read, score: first }] = takes as [(typeof takes)[number]];
  if (takes.length > 1) {
    const answer: ScoreAnswer = progressOf(takes.map(({ score: one }) => one));
    printAnswer(answer, words, terminal, (report, { paint }) => [
      ...showProgress(report, files, paint),
      ...showNext(
        takes.map(({ score: one }) => one),
        groundOf(first, words),
        paint,
      ),
    ]);
    return;
  }
  const answer: ScoreAnswer = first;
  printAnswer(answer, words, terminal, (one, { paint }) => [
    ...showScore(one, { part: read.said }, paint),
    ...showNext([one], groundOf(one, words), paint),
    ...(words.why ? showWhy(one, paint) : []),
  ]);
}

/** The song and the harp of a take, in words that another verb reads. */
function groundOf({ key, form }: Score, words: ScoreWords): NextGround {
  return { key, form: words.form ?? form, harp: words.harp };
}

function readScoreOptions(words: ScoreWords, terminal: Terminal): ScoreOptions {
  const { style, swing, latency, countIn, bars } = words;
  return {
    level: readLevel(words, terminal),
    swing: readNumber(swing),
    latency: readNumber(latency),
    ...(countIn === undefined ? {} : { countIn: readNumber(countIn) as number }),
    ...(bars === undefined ? {} : { bars: readBars(bars) }),
    ...(style === undefined ? {} : { style: style as PlayingStyle }),
  };
}

/** A number; any other word is handed on, to be known or refused by name. */
function readNumber(word: string): number | 'estimate' {
  const number = Number(word);
  return Number.isNaN(number) || word.trim() === '' ? (word as 'estimate') : number;
}

/** First and last bar: `5-8`, or `5` for one. The library says which bars the chart has. */
function readBars(word: string): readonly [number, number] {
  const [, from, to = from] = /^(\d{1,6})(?:-(\d{1,6}))?$/u.exec(word) ?? [];
  const where = { path: '--bars' };
  if (from === undefined) {
    const expected = 'bars as 5-8, or one as 5';
    throw new ReedplateError({ code: 'USAGE', value: word, expected, where });
  }
  if (Number(from) > Number(to)) {
    const [expected, nearest] = ['the earlier bar first', `${to}-${from}`];
    throw new ReedplateError({ code: 'USAGE', value: word, expected, nearest, where });
  }
  return [Number(from), Number(to)];
}

const HARP = 'harp at hand, for suggestions as tab; a take in tab needs it';

/** What the words of the print mean, for the help. */
const TERMS = [
  'What is printed:',
  '  of 100       80 and more is for lines in which one hears every change, around 70',
  '               good solos, under 30 what would do as well over any chords',
  '  feedback     what to do next: at most five, what matters most first',
  '  chord tones, changes, clashes and time are shares of what you played',
] as const;
