import {
  type ChartChordAvailability,
  chartAvailability,
  describeWarning,
  PLAYING_STYLES,
  type PlayingStyle,
} from '@reedplate/chord-tone';
import type { Chart } from '@reedplate/form';
import type { PlayerLike } from '@reedplate/layout';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { type LevelWords, readLevel, withLevel } from '../../shared/level-options.js';
import { withJson } from '../../shared/options.js';
import { type Page, type PrintWords, printAnswer } from '../../shared/print.js';
import { saySong } from '../../shared/say-chart.js';
import type { Terminal } from '../../terminal.js';
import { sayWhole, showShapes } from './shapes.js';
import { otherTones, sayOther, sayTones, TONE_COLUMNS } from './tones.js';

/** What `reedplate target --json` prints: each chord of the song once; its shapes with `--shapes`. */
export type TargetAnswer = readonly ChartChordAvailability[];

interface TargetWords extends ChartWords, HarpWords, LevelWords, PrintWords {
  readonly style?: string;
  readonly shapes: boolean;
}

/** Gives `reedplate target` its options and what it does. */
export function setUpTarget(verb: Command, terminal: Terminal): void {
  withJson(withLevel(withHarpOptions(withChartOptions(verb))))
    .option(
      '--style <style>',
      `what is judged to clash: ${PLAYING_STYLES.join(', ')}; that of the key without it`,
    )
    .option('--shapes', 'also every run, double stop and split that sounds part of a chord', false)
    .addHelpText(
      'after',
      examples(
        'reedplate target --form quick-change --key G --harp C',
        'reedplate target --key G --harp C --shapes --style major',
      ),
    )
    .action((words: TargetWords) => {
      const chart = readChart(words, terminal);
      const harp = readHarp(words, terminal);
      const level = readLevel(words, terminal);
      const answer: TargetAnswer = chartAvailability(chart, harp, {
        level,
        shapes: words.shapes,
        ...(words.style === undefined ? {} : { style: words.style as PlayingStyle }),
      });
      printAnswer(answer, words, terminal, (chords, page) => [
        page.paint('heading', saySong(chart, harp)),
        '',
        ...showBars(chart, chords, page),
        ...showWarnings(chords, level, page),
        ...(words.shapes ? showShapes(chords, page) : []),
      ]);
    });
}

const HEAD = ['bar', '', 'chord', 'root', 'third', 'fifth', 'seventh'] as const;

/** A row a chord of a bar; breaks have none. */
function showBars(chart: Chart, chords: TargetAnswer, { table }: Page): readonly string[] {
  const hasOthers = chords.some((found) => otherTones(found).length > 0);
  const rows = chart.spans.flatMap(({ bar, numeral, chord }) => {
    const found = chords.find((each) => each.chord.symbol === chord?.symbol);
    if (found === undefined) return [];
    return [
      [
        `${bar}`,
        numeral ?? '',
        found.chord.symbol,
        ...TONE_COLUMNS.map((degrees) => sayTones(found, degrees)),
        ...(hasOthers
          ? [
              otherTones(found)
                .map((degree) => sayOther(found, degree))
                .join('; '),
            ]
          : []),
        sayWhole(found.whole),
      ],
    ];
  });
  const head = [...HEAD, ...(hasOthers ? ['other tones'] : []), 'whole chord'];
  return table({ head, rows });
}

function showWarnings(chords: TargetAnswer, level: PlayerLike, { paint }: Page): readonly string[] {
  const warnings = chords.flatMap(({ chord, warnings: own }) =>
    own.map((warning) => describeWarning(warning, { chord, level })),
  );
  const told = [...new Set(warnings)].map((text) => `${paint('warning', 'warning:')} ${text}`);
  return told.length === 0 ? [] : ['', ...told];
}
