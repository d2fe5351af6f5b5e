import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import { type HandoutLine, handoutPage, THEME_IDS, type ThemeId } from '@reedplate/picture';
import { PRACTICE_KINDS, type PracticeKind, practiceLine } from '@reedplate/practice';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { readList } from '../../shared/read-words.js';
import type { Terminal } from '../../terminal.js';

interface HandoutWords extends ChartWords, HarpWords {
  readonly kinds: string;
  readonly level: string;
  readonly theme: string;
  readonly title?: string;
  readonly mirrored: boolean;
  readonly output: string;
}

/** Gives `reedplate handout` its options and what it does. */
export function setUpHandout(verb: Command, terminal: Terminal): void {
  withHarpOptions(withChartOptions(verb))
    .option(
      '--kinds <kinds>',
      `lines to practise, apart by commas: ${PRACTICE_KINDS.join(', ')}`,
      'roots,chords',
    )
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'natural')
    .option('--title <title>', 'title of the lesson; without it the form, its key and the harp')
    .option('--theme <theme>', `how it looks: ${THEME_IDS.join(', ')}`, 'print')
    .option('--mirrored', 'draw harps with hole 1 at the right', false)
    .option('-o, --output <file>', 'page to write, - for standard output', '-')
    .addHelpText(
      'after',
      examples('reedplate handout --form quick-change --key G --harp C -o lesson.html'),
    )
    .action((words: HandoutWords) => {
      const html = writeHandout(words, terminal);
      terminal.writeBytes(words.output, new TextEncoder().encode(html));
      if (words.output !== '-') terminal.out(`wrote ${words.output}: open it and print it\n`);
    });
}

function writeHandout(words: HandoutWords, terminal: Terminal): string {
  const chart = readChart(words, terminal);
  const harp = readHarp(words, terminal);
  const level = words.level as TechniqueLevel;
  const lines = readList(words.kinds).map((kind): HandoutLine => {
    const { line, steps } = practiceLine(chart, harp, { kind: kind as PracticeKind, level });
    const title = kind.charAt(0).toUpperCase() + kind.slice(1).replaceAll('-', ' ');
    return { title, line, soundings: steps.map(({ soundings }) => soundings) };
  });
  return handoutPage(chart, harp, {
    lines,
    theme: words.theme as ThemeId,
    mirrored: words.mirrored,
    ...(words.title === undefined ? {} : { title: words.title }),
  });
}
