import { PLAYING_STYLES, type PlayingStyle } from '@reedplate/chord-tone';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import type { Command } from 'commander';
import { type ChartWords, readChart, withChartOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import { type HarpWords, readHarp, withHarpOptions } from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import { type Paint, printReport } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import {
  type JudgedShape,
  type TargetChord,
  type TargetReport,
  type TargetShape,
  type TargetTone,
  targetReport,
} from './report.js';

interface TargetWords extends ChartWords, HarpWords {
  readonly level: string;
  readonly style?: string;
  readonly shapes: boolean;
  readonly json: boolean;
}

/** Gives `reedplate target` its options and what it does. */
export function setUpTarget(verb: Command, terminal: Terminal): void {
  withJson(withHarpOptions(withChartOptions(verb)))
    .option('--level <level>', `what the player can do: ${TECHNIQUE_LEVELS.join(', ')}`, 'bends')
    .option(
      '--style <style>',
      `what is judged to clash: ${PLAYING_STYLES.join(', ')}; that of the key without it`,
    )
    .option('--shapes', 'also every run, double stop and split that sounds part of a chord', false)
    .addHelpText(
      'after',
      examples(
        'reedplate target --form quick-change --key G --harp C',
        'reedplate target --key G --harp C --shapes --style bright-major',
      ),
    )
    .action((words: TargetWords) => {
      const { level, style } = words;
      const options = {
        level: level as TechniqueLevel,
        ...(style === undefined ? {} : { style: style as PlayingStyle }),
      };
      const report = targetReport(readChart(words, terminal), readHarp(words, terminal), options);
      printReport(report, words, terminal, (shown, paint) => [
        ...showTargets(shown, paint),
        ...(words.shapes ? showShapes(shown, paint) : []),
      ]);
    });
}

function showTargets({ harp, form, key, bars }: TargetReport, paint: Paint): readonly string[] {
  const entries = bars.flatMap(({ bar, chords }) => chords.map((chord) => ({ bar, chord })));
  const hasOthers = entries.some(({ chord }) => otherTones(chord).length > 0);
  const rows = entries.map(({ bar, chord }) => [
    `${bar}`,
    chord.numeral,
    chord.chord,
    ...COLUMNS.map((degrees) => sayTab(toneOf(chord, degrees)?.tab)),
    ...(hasOthers ? [otherTones(chord).map(sayOther).join('; ')] : []),
    sayWhole(chord.whole),
  ]);
  const head = [...HEAD, ...(hasOthers ? ['other tones'] : []), 'whole chord'];
  const [heading = '', ...body] = setColumns([head, ...rows]);
  const warnings = warningsOf(entries.map(({ chord }) => chord));
  return [
    paint('heading', `${form} in ${key} on the ${sayHarp(harp)}`),
    '',
    paint('heading', heading),
    ...body,
    ...(warnings.length === 0 ? [] : ['']),
    ...warnings.map((text) => `${paint('warning', 'warning:')} ${text}`),
  ];
}

const FITS = ['complete', 'partial', 'coloured', 'contradicting'] as const;

const BREATHS = ['blow', 'draw'] as const;

/** For each chord, fit and breath, the shapes worth playing, or worth a warning. */
function showShapes({ shapes }: TargetReport, paint: Paint): readonly string[] {
  const rows = shapes.flatMap(({ chord, shapes: all }) =>
    FITS.flatMap((fit) =>
      BREATHS.map((breath) => {
        const found = all.filter((shape) => shape.fit === fit && shape.breath === breath);
        return [chord, fit, breath, found.filter(isWorthShowing).map(sayShape).join('  ')];
      }),
    ).filter(([, , , holes]) => holes !== ''),
  );
  const [head = '', ...body] = setColumns([['chord', 'fit', 'breath', 'holes'], ...rows]);
  return ['', paint('heading', head), ...body, '', paint('remark', SHAPE_MARKS)];
}

const SHAPE_MARKS =
  'in brackets what a shape lacks (-), adds (+) or clashes with (!); 4,6 is a split';

/** Half of a chord at least; of what contradicts it, only what holds its root. */
function isWorthShowing({ fit, tones }: JudgedShape): boolean {
  if (fit === 'contradicting') return tones.includes('1');
  return tones.length >= 2;
}

function sayShape({ gesture, holes, lacks, adds, clashes }: JudgedShape): string {
  const marks = [
    ...lacks.map((degree) => `-${degree}`),
    ...adds.map((degree) => `+${degree}`),
    ...clashes.map(({ above }) => `!${above}`),
  ];
  const place = holes.join(gesture === 'split' ? ',' : '-');
  return marks.length === 0 ? place : `${place} (${marks.join(' ')})`;
}

const HEAD = ['bar', '', 'chord', 'root', 'third', 'fifth', 'seventh'] as const;

/** The degrees that stand in each column of tones. */
const COLUMNS = [['1'], ['3', 'b3'], ['5', 'b5', '#5'], ['7', 'b7', 'bb7']] as const;

function toneOf({ tones }: TargetChord, degrees: readonly string[]): TargetTone | undefined {
  return tones.find(({ degree }) => degrees.includes(degree));
}

/** Tones that have no column: sixths and ninths, the fourth of a suspended chord. */
function otherTones(chord: TargetChord): readonly TargetTone[] {
  const inColumns = new Set(COLUMNS.map((degrees) => toneOf(chord, degrees)));
  return chord.tones.filter((tone) => !inColumns.has(tone));
}

function sayOther({ degree, tab }: TargetTone): string {
  return `${degree}: ${sayTab(tab)}`;
}

function sayTab(tab: readonly string[] | undefined): string {
  if (tab === undefined) return '';
  return tab.length === 0 ? '(none)' : tab.join(' ');
}

/**
 * Neighbouring holes, joined where they overlap and lack the same: any three neighbours of
 * `draw 1-4` sound the chord. What they lack stands after them.
 */
function sayWhole(shapes: readonly TargetShape[]): string {
  const runs = shapes.filter(({ gesture, adds }) => gesture !== 'split' && adds.length === 0);
  const groups = new Map<string, TargetShape[]>();
  for (const run of runs) {
    const label = `${run.breath}/${run.lacks.join(' ')}`;
    groups.set(label, [...(groups.get(label) ?? []), run]);
  }
  return [...groups.values()].flatMap(joinRuns).map(sayStretch).join(', ') || 'none';
}

/** Neighbouring holes, from the lowest to the highest. */
interface Stretch {
  readonly run: TargetShape;
  readonly from: number;
  readonly to: number;
}

function joinRuns(runs: readonly TargetShape[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const run of [...runs].sort((a, b) => (a.holes[0] ?? 0) - (b.holes[0] ?? 0))) {
    const [from = 0, to = 0] = [run.holes[0], run.holes.at(-1)];
    const last = stretches.at(-1);
    if (last === undefined || from > last.to) stretches.push({ run, from, to });
    else stretches.splice(-1, 1, { ...last, to: Math.max(last.to, to) });
  }
  return stretches;
}

function sayStretch({ run, from, to }: Stretch): string {
  const without = run.lacks.length === 0 ? '' : ` (no ${run.lacks.join(' ')})`;
  return `${run.breath} ${from}-${to}${without}`;
}

function warningsOf(chords: readonly TargetChord[]): readonly string[] {
  return [...new Set(chords.flatMap(({ warnings }) => warnings.map(({ text }) => text)))];
}
