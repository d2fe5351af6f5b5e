import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import { parseKey, ReedplateError, requireOneOf } from '@reedplate/pitch';
import {
  EXERCISE_KINDS,
  type Exercise,
  type ExerciseKind,
  makeExercise,
  PRACTICE_KINDS,
  type PracticeKind,
  type PracticeLine,
  type PracticeOptions,
  practiceLine,
} from '@reedplate/practice';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { saySong } from '../../shared/say-chart.js';
import { notesOf, placeOf, tabOf } from '../../shared/say-grips.js';
import { readTempoOption, type TempoWords, withTempoOption } from '../../shared/tempo-option.js';
import { type WrittenSong, writeLine } from '../../shared/write-line.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate practice --json` prints; `reedplate score` and `path` read its line. */
export type PracticeAnswer = PracticeLine | Exercise;

interface PracticeWords extends ChartWords, HarpWords, LevelWords, TempoWords, PrintWords {
  readonly kind: string;
  readonly output?: string;
  readonly title?: string;
}

const KINDS = [...PRACTICE_KINDS, ...EXERCISE_KINDS];

/** Gives `reedplate practice` its options and what it does. */
export function setUpPractice(verb: Command, terminal: Terminal): void {
  withJson(withTempoOption(withLevel(withHarpOptions(withChartOptions(verb)))))
    .option('--kind <kind>', `what to practise: ${KINDS.join(', ')}`, 'roots')
    .option('--title <title>', 'title of what is written; without it kind, form and key')
    .option('-o, --output <file>', 'write the line too: .json, .mid, .musicxml, .abc or .tab')
    .addHelpText(
      'after',
      examples(
        'reedplate practice --form basic --key G --harp C --kind guide-tones',
        'reedplate practice --form basic --key G --harp C -o roots.musicxml',
      ),
    )
    .action(async (words: PracticeWords) => {
      const chart = readChart(words, terminal, readTempoOption(words));
      const harp = readHarp(words, terminal);
      requireOneOf(words.kind, KINDS, { what: 'a kind of line or exercise' });
      const exercise = EXERCISE_KINDS.find((kind) => kind === words.kind);
      if (exercise !== undefined) return drill(exercise, { chart, harp }, words, terminal);
      const answer = practiceLine(chart, harp, readOptions(words, terminal));
      if (words.output !== undefined) {
        const title = words.title ?? titleOf(answer.kind, chart);
        const soundings = answer.steps.map((step) => step.soundings);
        await writeLine({ ...answer, soundings, title }, { chart, harp }, words.output, terminal);
      }
      printAnswer(answer, words, terminal, (line, page) => showPractice(line, chart, harp, page));
    });
}

/** An exercise: its goal, its tab, and the same files as of a line. */
async function drill(
  kind: ExerciseKind,
  song: WrittenSong,
  words: PracticeWords,
  terminal: Terminal,
): Promise<void> {
  const { chart, harp } = song;
  const made = makeExercise(chart, harp, { kind, level: readLevel(words, terminal) });
  if (!made.playable) {
    throw new ReedplateError({
      code: 'SOUNDING_IMPOSSIBLE',
      value: made.without.join(', '),
      expected: 'chords of which this harp has a tone at this level',
    });
  }
  if (words.output !== undefined) {
    const title = words.title ?? titleOf(kind, chart);
    await writeLine({ ...made, title }, song, words.output, terminal);
  }
  printAnswer(made, words, terminal, ({ goal, tab, cautions }, { paint }) => [
    paint('heading', `${kind} of ${saySong(chart, harp)}`),
    goal,
    '',
    tab,
    ...cautions.map((caution) => paint('aside', caution)),
  ]);
}

function readOptions(words: PracticeWords, terminal: Terminal): PracticeOptions {
  return { kind: words.kind as PracticeKind, level: readLevel(words, terminal) };
}

/** What is called after its kind where a player gives no title. */
function titleOf(kind: string, chart: Chart): string {
  const usual = `${kind.charAt(0).toUpperCase()}${kind.slice(1).replaceAll('-', ' ')}`;
  return `${usual} of ${saySong(chart)}`;
}

function showPractice(
  { kind, steps, cautions }: PracticeLine,
  chart: Chart,
  harp: Harp,
  { paint, table }: Page,
): readonly string[] {
  const key = parseKey(chart.key);
  const rows = steps.map((step) => [
    placeOf(step),
    step.numeral ?? '',
    step.chord.symbol,
    tabOf([step.soundings]),
    notesOf(step.soundings, key),
    step.degrees.join(' '),
  ]);
  return [
    paint('heading', `${kind} of ${saySong(chart, harp)}`),
    '',
    ...table({ head: ['bar', '', 'chord', 'tab', 'notes', 'degrees'], rows }),
    '',
    ...sayStandIns(kind, steps).map((line) => paint('aside', line)),
    ...cautions.map((caution) => paint('aside', caution)),
  ];
}

/** What a kind of line plays wherever the harp has it; the other kinds take any tone. */
const WANTED: ReadonlyMap<
  PracticeKind,
  { readonly what: string; readonly degrees: readonly string[] }
> = new Map([
  ['roots', { what: 'root', degrees: ['1'] }],
  ['guide-tones', { what: 'third or seventh', degrees: ['b3', '3', 'bb7', 'b7', '7', '6'] }],
]);

/** A line that does not play what was asked for says so. */
function sayStandIns(kind: PracticeKind, steps: PracticeLine['steps']): readonly string[] {
  const wanted = WANTED.get(kind);
  if (wanted === undefined) return [];
  const { what, degrees } = wanted;
  const standIns = steps.filter((step) => !step.degrees.some((had) => degrees.includes(had)));
  const chords = [...new Set(standIns.map(({ chord }) => chord.symbol))].join(', ');
  if (chords === '') return [];
  return [
    `At this level the harp has no ${what} of ${chords}: another tone stands in; see --level.`,
  ];
}
