import type { Chart } from '@reedplate/form';
import type { Harp } from '@reedplate/layout';
import { type HandoutLine, handoutPage, THEME_IDS, type ThemeId } from '@reedplate/picture';
import { PRACTICE_KINDS, type PracticeKind, practiceLine } from '@reedplate/practice';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import {
  type PhraseFolderWords,
  readPhraseFolder,
  withPhraseFolder,
} from '../../shared/phrase-folder.js';
import { readList } from '../../shared/read-words.js';
import { sayHarp } from '../../shared/say-harp.js';
import { readTempoOption, type TempoWords, withTempoOption } from '../../shared/tempo-option.js';
import type { Terminal } from '../../terminal.js';
import { phraseLines } from './phrase-lines.js';
import { findStaffDrawer, type StaffDrawer } from './staff-drawer.js';

interface HandoutWords extends ChartWords, HarpWords, LevelWords, TempoWords, PhraseFolderWords {
  readonly kinds: string;
  readonly phrases?: string | false;
  readonly theme: string;
  readonly title?: string;
  readonly mirrored: boolean;
  readonly staff: boolean;
  readonly output: string;
}

/** Gives `reedplate handout` its options and what it does. */
export function setUpHandout(verb: Command, terminal: Terminal): void {
  withPhraseFolder(withTempoOption(withLevel(withHarpOptions(withChartOptions(verb)))))
    .option(
      '--kinds <kinds>',
      `lines to practise, apart by commas: ${PRACTICE_KINDS.join(', ')}`,
      'roots,chords',
    )
    .option(
      '--phrases <phrases>',
      'phrases by id, apart by commas, each over a bar: stair@5; without it a riff and a turnaround that fit',
    )
    .option('--no-phrases', 'leave phrases out')
    .option('--title <title>', 'title of the lesson; without it the form, its key and the harp')
    .option('--theme <theme>', `how it looks: ${THEME_IDS.join(', ')}`, 'print')
    .option('--mirrored', 'draw harps with hole 1 at the right', false)
    .option('--no-staff', 'leave staff notation out; it needs verovio installed beside reedplate')
    .option('-o, --output <file>', 'page to write, - for standard output', '-')
    .addHelpText(
      'after',
      examples('reedplate handout --form quick-change --key G --harp C -o lesson.html'),
    )
    .action(async (words: HandoutWords) => {
      const draw = words.staff ? await findStaffDrawer() : undefined;
      const html = await writeHandout(words, terminal, draw);
      terminal.writeBytes(words.output, new TextEncoder().encode(html));
      if (words.output !== '-') terminal.out(`wrote ${words.output}: open it and print it\n`);
    });
}

async function writeHandout(
  words: HandoutWords,
  terminal: Terminal,
  draw: StaffDrawer | undefined,
): Promise<string> {
  const chart = readChart(words, terminal, readTempoOption(words));
  const harp = readHarp(words, terminal);
  const level = readLevel(words, terminal);
  const practice = readList(words.kinds).map((kind): HandoutLine => {
    const { line, steps } = practiceLine(chart, harp, { kind: kind as PracticeKind, level });
    const title = kind.charAt(0).toUpperCase() + kind.slice(1).replaceAll('-', ' ');
    return { title, line, soundings: steps.map(({ soundings }) => soundings) };
  });
  const phrases = phraseLines(words.phrases, {
    chart,
    harp,
    level,
    own: readPhraseFolder(words, terminal),
  });
  const lines = [...practice, ...phrases];
  return handoutPage(chart, harp, {
    lines: draw === undefined ? lines : await withNotation(lines, chart, harp, draw),
    theme: words.theme as ThemeId,
    mirrored: words.mirrored,
    level,
    ...(words.title === undefined ? {} : { title: words.title }),
  });
}

/** Each line with its staff notation. */
async function withNotation(
  lines: readonly HandoutLine[],
  chart: Chart,
  harp: Harp,
  draw: StaffDrawer,
): Promise<readonly HandoutLine[]> {
  const { writeMusicXml, tabLyrics } = await import('@reedplate/interchange');
  return lines.map((each) => {
    const { title, line, soundings = [], chart: own = chart } = each;
    const sheet = { line, chart: own, key: own.key };
    const score = { title, subtitle: sayHarp(harp), words: tabLyrics(line, harp, { soundings }) };
    return { ...each, notation: draw(writeMusicXml(sheet, score)) };
  });
}
