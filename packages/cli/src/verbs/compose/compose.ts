import type { Chart } from '@reedplate/form';
import { type Harp, TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { itemAt, parseKey } from '@reedplate/pitch';
import {
  type ComposedLine,
  type ComposedStep,
  type ComposeOptions,
  composeLine,
  LINE_ENDINGS,
  type LineEnding,
  learnPhrases,
} from '@reedplate/practice';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import {
  type PhraseFolderWords,
  readPhraseFolder,
  withPhraseFolder,
} from '../../shared/phrase-folder.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readNumber, readWholeNumber } from '../../shared/read-words.js';
import { saySong } from '../../shared/say-chart.js';
import { tabOf } from '../../shared/say-grips.js';
import { readTempoOption, type TempoWords, withTempoOption } from '../../shared/tempo-option.js';
import { writeLine } from '../../shared/write-line.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate compose --json` prints; `reedplate score` and `path` read its line. */
export type ComposeAnswer = ComposedLine;

interface ComposeWords extends ChartWords, HarpWords, TempoWords, PrintWords, PhraseFolderWords {
  readonly seed: string;
  readonly level: string;
  readonly plan?: string;
  readonly fewest: string;
  readonly most: string;
  readonly last: string;
  readonly effort?: string;
  readonly title?: string;
  readonly output?: string;
}

/** Gives `reedplate compose` its options and what it does. */
export function setUpCompose(verb: Command, terminal: Terminal): void {
  withPhraseFolder(withJson(withTempoOption(withHarpOptions(withChartOptions(verb)))))
    .option('--seed <number>', 'another number, another line', '1')
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option('--plan <letters>', 'phrases of a chorus, alike letters alike: AAB over twelve bars')
    .option('--fewest <notes>', 'notes that begin in a bar, at least', '2')
    .option('--most <notes>', 'notes that begin in a bar, at most', '6')
    .option('--last <note>', `what each chorus ends on: ${LINE_ENDINGS.join(', ')}`, 'chord-tone')
    .option('--effort <points>', 'most points of effort a bar')
    .option('--title <title>', 'title of what is written; without it plan, form and key')
    .option('-o, --output <file>', 'write the line too: .json, .mid, .musicxml, .abc or .tab')
    .addHelpText(
      'after',
      examples(
        'reedplate compose --form quick-change --key G --harp C --level natural --seed 3',
        'reedplate compose --key A --harp D --most 4 -o blues-in-a.musicxml',
      ),
    )
    .action(async (words: ComposeWords) => {
      const chart = readChart(words, terminal, readTempoOption(words));
      const harp = readHarp(words, terminal);
      const answer: ComposeAnswer = composeLine(chart, harp, {
        ...readOptions(words),
        ...readModel(words, chart, terminal),
      });
      if (words.output !== undefined) {
        const title = words.title ?? `Line over ${saySong(chart)}`;
        const soundings = answer.steps.map(({ sounding }) => [sounding]);
        await writeLine({ ...answer, soundings, title }, { chart, harp }, words.output, terminal);
      }
      printAnswer(answer, words, terminal, (line, page) => showComposed(line, chart, harp, page));
    });
}

function readOptions({
  seed,
  level,
  plan,
  fewest,
  most,
  last,
  effort,
}: ComposeWords): ComposeOptions {
  const notes = { min: 0, max: 100, what: 'a number of notes' };
  return {
    seed: readWholeNumber(seed, { min: 0, max: Number.MAX_SAFE_INTEGER, what: 'a seed' }),
    level: level as TechniqueLevel,
    density: { fewest: readWholeNumber(fewest, notes), most: readWholeNumber(most, notes) },
    ending: last as LineEnding,
    ...(plan === undefined ? {} : { plan }),
    ...(effort === undefined ? {} : { effort: readNumber(effort, 'points of effort a bar') }),
  };
}

/** What phrases of one's own like to do, where a folder of them is named. */
function readModel(words: ComposeWords, chart: Chart, terminal: Terminal): ComposeOptions {
  const phrases = readPhraseFolder(words, terminal);
  if (phrases.length === 0) return {};
  return { model: learnPhrases(phrases, parseKey(chart.key).mode) };
}

function showComposed(
  { seed, steps }: ComposeAnswer,
  chart: Chart,
  harp: Harp,
  { paint, table }: Page,
): readonly string[] {
  const bars = [...new Set(steps.map(({ bar }) => bar))];
  const rows = bars.map((bar) => rowOf(steps.filter((step) => step.bar === bar)));
  return [
    paint('heading', `line over ${saySong(chart, harp)}, seed ${seed}`),
    '',
    ...table({ head: ['bar', '', 'chord', 'tab', 'beats', 'degrees'], rows }),
    '',
    'Degrees are those of the chord; a dot is another note, on its way to one of them.',
  ];
}

function rowOf(steps: readonly ComposedStep[]): readonly string[] {
  const chords = [...new Set(steps.map(({ chord }) => chord?.symbol ?? 'N.C.'))];
  const { bar, phrase } = itemAt(steps, 0);
  return [
    `${bar}`,
    phrase,
    chords.join(' '),
    tabOf(steps.map(({ sounding }) => [sounding])),
    steps.map(({ beat }) => `${Math.round(beat * 100) / 100}`).join(' '),
    steps.map(({ degree }) => degree ?? '.').join(' '),
  ];
}
