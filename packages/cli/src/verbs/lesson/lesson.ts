import { makeBacking } from '@reedplate/backing';
import { type Chart, FORMS, formOfChart } from '@reedplate/form';
import { tabLyrics, writeMidi, writeMusicXml } from '@reedplate/interchange';
import { harpName, makeHarp } from '@reedplate/layout';
import { handoutPage } from '@reedplate/picture';
import { itemAt, parseKey, ReedplateError } from '@reedplate/pitch';
import {
  LESSON_GOALS,
  type Lesson,
  type LessonGoal,
  type LessonStep,
  makeLesson,
} from '@reedplate/practice';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type HarpChoiceWords,
  readHarpChoice,
  withHarpChoiceOptions,
} from '../../shared/harp-choice.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJsonOfHarps } from '../../shared/options.js';
import {
  type PhraseFolderWords,
  readPhraseFolder,
  withPhraseFolder,
} from '../../shared/phrase-folder.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { readList, readWholeNumber } from '../../shared/read-words.js';
import { stepLine } from '../../shared/step-line.js';
import type { Terminal } from '../../terminal.js';

/** What `reedplate lesson --json` prints. */
export type LessonAnswer = Lesson;

interface LessonWords
  extends ChartWords,
    HarpChoiceWords,
    LevelWords,
    PrintWords,
    PhraseFolderWords {
  readonly harp?: string;
  readonly minutes: string;
  readonly goals?: string;
  readonly output?: string;
}

/** Gives `reedplate lesson` its options and what it does. */
export function setUpLesson(verb: Command, terminal: Terminal): void {
  withPhraseFolder(
    withJsonOfHarps(
      withLevel(withHarpChoiceOptions(withChartOptions(verb)), 'what the student can do'),
    ),
  )
    .option('--harp <key>', 'harp to play; without it the best of those there are')
    .option('--minutes <number>', 'how long, 6 to 180', '20')
    .option('--goals <goals>', `what to work on, apart by commas: ${LESSON_GOALS.join(', ')}`)
    .option(
      '-o, --output <folder>',
      'folder to write: handout, band, and each line as MIDI, MusicXML and tab',
    )
    .addHelpText(
      'after',
      examples(
        'reedplate lesson --form quick-change --key A --level natural --minutes 20',
        'reedplate lesson --form minor --key Dm --harp C -o lesson-in-dm',
      ),
    )
    .action((words: LessonWords) => {
      requireFolder(words);
      const answer: LessonAnswer = makeLesson(readOptions(words, terminal));
      if (words.output !== undefined) terminal.writeFolder(words.output, filesOf(answer));
      printAnswer(answer, words, terminal, showLesson);
    });
}

/** A lesson is many files: standard output does not hold them. */
function requireFolder({ output }: LessonWords): void {
  if (output !== '-') return;
  throw new ReedplateError({ code: 'USAGE', value: '-o -', expected: 'the name of a folder' });
}

function readOptions(words: LessonWords, terminal: Terminal) {
  const chart = readChart(words, terminal);
  const { minutes, goals, harp } = words;
  return {
    form: formOfChart(chart, { name: nameOf(chart.form) }),
    key: parseKey(chart.key),
    level: readLevel(words, terminal),
    known: { phrases: readPhraseFolder(words, terminal) },
    minutes: readWholeNumber(minutes, { min: 6, max: 180, what: 'minutes' }),
    ...(goals === undefined ? {} : { goals: readList(goals) as readonly LessonGoal[] }),
    ...harpOptions(harp, words, terminal),
  };
}

/** What the catalogue calls a form; else its id. */
function nameOf(id: string): string {
  return FORMS.find((form) => form.id === id)?.name ?? id;
}

function harpOptions(harp: string | undefined, words: LessonWords, terminal: Terminal) {
  const { own, tuning } = readHarpChoice(words, terminal);
  if (harp !== undefined) return { harp: makeHarp(parseKey(harp), { tuning }) };
  return own === undefined ? {} : { own };
}

/** The files of a lesson by their names, all made before the first is written. */
function filesOf(lesson: Lesson): ReadonlyMap<string, Uint8Array> {
  const { chart, harp, title, steps } = lesson;
  const text = (content: string): Uint8Array => new TextEncoder().encode(content);
  const lines = steps.map(stepLine);
  const tempo = itemAt(itemAt(steps, 0).tempos, 0);
  const files = new Map<string, Uint8Array>([
    ['handout.html', text(handoutPage(chart, harp, { title, lines }))],
    ['lesson.txt', text(`${sayLesson(lesson).join('\n')}\n`)],
    ['band.mid', writeMidi(makeBacking({ ...chart, tempo }))],
  ]);
  for (const [index, step] of steps.entries()) {
    for (const [name, bytes] of lineFiles(step, index, lesson, text)) files.set(name, bytes);
  }
  return files;
}

function lineFiles(
  { goal, title, line: written, soundings, tab, tempos }: LessonStep,
  index: number,
  { chart, harp }: Lesson,
  text: (content: string) => Uint8Array,
): readonly (readonly [string, Uint8Array])[] {
  const name = `${index + 1}-${goal}`;
  // In the feel of the song, over its chords, at the tempo that the student begins with.
  const tempo = itemAt(tempos, 0);
  const line = { ...written, tempo };
  const sheet = { line, chart: { ...chart, tempo }, key: chart.key };
  return [
    [`${name}.mid`, writeMidi(sheet)],
    [
      `${name}.musicxml`,
      text(writeMusicXml(sheet, { title, words: tabLyrics(line, harp, { soundings }) })),
    ],
    [`${name}.tab`, text(`${title}\nharp in ${harpName(harp)}\n\n${rowsOf(tab).join(' |\n')}\n`)],
  ];
}

function showLesson(lesson: Lesson, { paint }: Page): readonly string[] {
  const [title = '', ...rest] = sayLesson(lesson);
  return [paint('heading', title), ...rest];
}

/** The lesson as text, the title first. */
function sayLesson({ title, chart, words, steps, minutes }: Lesson): readonly string[] {
  return [
    `${title}: ${minutes} minutes`,
    '',
    ...words,
    ...steps.flatMap((step, index) => ['', ...sayStep(step, index, chart)]),
  ];
}

function sayStep(step: LessonStep, index: number, chart: Chart): readonly string[] {
  const { title, words, minutes, tempos, loop, judged, tab, playedOtherwise, cautions } = step;
  return [
    `${index + 1}. ${title}, ${minutes} min`,
    words,
    `Loop bars ${loop.from} to ${loop.to}, at ${tempos.join(', ')} beats a minute. ${judged}`,
    ...tabRows(tab, loop.from, chart),
    ...playedOtherwise,
    ...cautions,
  ];
}

/** Bars of tab in a row. */
const ROW = 4;

/** The tab, four bars in a row. A bar whose last note sounds on into the next shares its place with it. */
function rowsOf(tab: string): readonly string[] {
  const bars = tab.split(' | ');
  return Array.from({ length: Math.ceil(bars.length / ROW) }, (_, row) =>
    bars.slice(row * ROW, (row + 1) * ROW).join(' | '),
  );
}

/** The same rows, each under the names of its bars and their chords. */
function tabRows(tab: string, firstBar: number, { spans }: Chart): readonly string[] {
  return rowsOf(tab).flatMap((row, index) => {
    const from = firstBar + index * ROW;
    const to = from + row.split(' | ').length - 1;
    const chords = Array.from({ length: to - from + 1 }, (_, at) =>
      spans
        .filter(({ bar }) => bar === from + at)
        .map(({ chord }) => chord?.symbol ?? 'N.C.')
        .join(' '),
    );
    const name = to === from ? `bar ${from}` : `bars ${from} to ${to}`;
    return [`${name}: ${chords.join(' | ')}`, `  ${row}`];
  });
}
