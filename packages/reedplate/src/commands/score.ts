import {
  type ChangeScore,
  type Measures,
  type NoteClass,
  type NoteScore,
  type Score,
  type ScoreOptions,
  STYLES,
  type Style,
} from '@reedplate/chord-tone';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import type { Command } from 'commander';
import { type ChartForLineWords, readChartFor } from '../command/chart-for-line.js';
import { withChartForLineOptions } from '../command/chart-options.js';
import { examples } from '../command/examples.js';
import {
  type MaybeHarpWords,
  readMaybeHarp,
  withMaybeHarpOptions,
} from '../command/harp-options.js';
import { withJson } from '../command/options.js';
import { readPieceFile } from '../command/piece-file.js';
import { type Paint, printReport } from '../command/print.js';
import { setColumns } from '../command/table.js';
import type { Terminal } from '../command/terminal.js';
import { type ScoreReport, scoreReport } from '../reports/score.js';
import { sayHarp } from './say-harp.js';

interface ScoreWords extends ChartForLineWords, MaybeHarpWords {
  readonly level: string;
  readonly style?: string;
  readonly swing: string;
  readonly latency: string;
  readonly json: boolean;
}

/** Adds `reedplate score`. */
export function addScore(program: Command, terminal: Terminal): void {
  withJson(withMaybeHarpOptions(withChartForLineOptions(program.command('score')), HARP))
    .argument(
      '<take>',
      'file of the take: a line as JSON, MIDI, MusicXML, ABC or tab; - for standard input',
    )
    .description('how well a take follows the changes, in total, by bar and by change, and why')
    .option('--level <level>', `what suggestions may ask for: ${LEVELS}`, 'bends')
    .option('--style <style>', `what is judged to clash: ${STYLES.join(', ')} (by the key)`)
    .option('--swing <ratio>', 'long to short part of the beat, 1 to 4, or estimate', 'estimate')
    .option('--latency <ticks>', 'how late the take was recorded, or estimate', '0')
    .addHelpText(
      'after',
      examples(
        'reedplate score take.json --form quick-change --key G --harp C',
        'reedplate score take.json --key Am --style minor --latency estimate',
      ),
    )
    .action((file: string, words: ScoreWords) => {
      // A take may be tablature, which the harp gives its notes.
      const harp = readMaybeHarp(words, terminal);
      const take = readPieceFile(file, terminal, harp).line;
      const options = { ...readScoreOptions(words), ...harp };
      printReport(
        scoreReport(take, readChartFor(take, words, terminal), options),
        words,
        terminal,
        showScore,
      );
    });
}

function readScoreOptions(words: ScoreWords): ScoreOptions {
  const { level, style, swing, latency } = words;
  return {
    level: level as TechniqueLevel,
    swing: readEstimate(swing),
    latency: readEstimate(latency),
    ...(style === undefined ? {} : { style: style as Style }),
  };
}

/** A number or `estimate`; any other word is handed on, to be refused by name. */
function readEstimate(word: string): number | 'estimate' {
  const number = Number(word);
  return Number.isNaN(number) || word.trim() === '' ? (word as 'estimate') : number;
}

const HARP = 'harp at hand, for suggestions as tab; a take in tab needs it';

const LEVELS = TECHNIQUE_LEVELS.join(', ');

function showScore(report: ScoreReport, paint: Paint): readonly string[] {
  const { score, remarks } = report;
  return [
    paint('heading', titleOf(report)),
    '',
    `${paint('heading', `${Math.round(score.total)} of 100`)}   the same notes in any order: ${Math.round(score.chance)}; sureness ${percent(score.confidence)}`,
    '',
    ...showMeasures(score.measures),
    '',
    ...showBars(score, paint),
    '',
    ...showChanges(score.changes, paint),
    ...(remarks.length === 0 ? [] : ['', paint('heading', 'marked down')]),
    ...remarks.map((remark) => `  ${remark}`),
  ];
}

function titleOf({ title, form, key, harp }: ScoreReport): string {
  return `${title ?? 'take'}: ${form} in ${key}${harp === null ? '' : ` on the ${sayHarp(harp)}`}`;
}

const MEASURE_NAMES: readonly (readonly [keyof Measures, string])[] = [
  ['landing', 'landing on a chord tone at the changes'],
  ['coverage', 'changes that the line shows'],
  ['chordToneShare', 'time on chord tones'],
  ['guideToneShare', 'time on thirds and sevenths'],
  ['resolution', 'other notes that resolve'],
  ['clashTime', 'time on clashes (less is better)'],
  ['timing', 'onsets on the grid'],
];

function showMeasures(measures: Measures): readonly string[] {
  return setColumns(
    MEASURE_NAMES.map(([measure, name]) => [percent(measures[measure]).padStart(5), name]),
  );
}

const STRIP = 10;

/** One row a bar: a strip of marks as long as the bar is good, its number, and what was played. */
function showBars({ bars, notes }: Score, paint: Paint): readonly string[] {
  const played = new Map<number, string[]>();
  for (const note of notes) played.set(note.bar, [...(played.get(note.bar) ?? []), sayNote(note)]);
  const rows = bars.map(({ bar, chords, fit }) => [
    `${bar}`,
    chords.join(' '),
    fit === null ? '' : '='.repeat(Math.round(fit * STRIP)).padEnd(STRIP, '.'),
    fit === null ? 'rest' : percent(fit),
    (played.get(bar) ?? []).join(' '),
  ]);
  const head = ['bar', 'chord', 'fit', '', 'degrees played'];
  const [first = '', ...body] = setColumns([head, ...rows]);
  return [paint('heading', first), ...body, '', paint('remark', MARKS)];
}

/** What stands around a degree to say what the note is to its chord. */
const MARK_OF_CLASS: Readonly<Record<NoteClass, readonly [string, string]>> = {
  root: ['', ''],
  'guide-tone': ['', ''],
  'chord-tone': ['', ''],
  blue: ['', '*'],
  colour: ['', '*'],
  passing: ['(', ')'],
  neighbour: ['(', ')'],
  approach: ['(', ')'],
  unresolved: ['', '?'],
  clash: ['', '!'],
  unjudged: ['', ''],
};

const MARKS =
  'degrees above the root; * blue or colour, ( ) resolves, ? does not, ! clashes, _ held, > pushed';

function sayNote({ degree, class: kind, held, push }: NoteScore): string {
  const [before, after] = MARK_OF_CLASS[kind];
  return `${held ? '_' : ''}${push ? '>' : ''}${before}${degree ?? '-'}${after}`;
}

function showChanges(changes: readonly ChangeScore[], paint: Paint): readonly string[] {
  const rows = changes.map(({ bar, beat, chord, class: kind, landing, shown }) => [
    `${bar}:${beat}`,
    chord,
    kind ?? 'rest',
    landing === null ? '' : percent(landing),
    shown === false ? 'not shown' : '',
  ]);
  const [head = '', ...body] = setColumns([['change', 'chord', 'lands on', '', ''], ...rows]);
  return [paint('heading', head), ...body];
}

function percent(share: number | null): string {
  return share === null ? '-' : `${Math.round(share * 100)} %`;
}
