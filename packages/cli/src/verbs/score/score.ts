import {
  type ChangeScore,
  describeNote,
  type NoteClass,
  type NoteScore,
  PLAYING_STYLES,
  type PlayingStyle,
  type Score,
  type ScoreMeasures,
  type ScoreOptions,
} from '@reedplate/chord-tone';
import { TECHNIQUE_LEVELS, type TechniqueLevel } from '@reedplate/layout';
import type { Command } from 'commander';
import { type ChartForLineWords, readChartFor } from '../../shared/chart-for-line.js';
import { withChartForLineOptions } from '../../shared/chart-options.js';
import { examples } from '../../shared/examples.js';
import {
  type MaybeHarpWords,
  readMaybeHarp,
  withMaybeHarpOptions,
} from '../../shared/harp-options.js';
import { withJson } from '../../shared/options.js';
import { readPieceFile } from '../../shared/piece-file.js';
import { type Paint, printReport } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { setColumns } from '../../shared/table.js';
import type { Terminal } from '../../terminal.js';
import { type ScoreReport, scoreReport } from './report.js';

interface ScoreWords extends ChartForLineWords, MaybeHarpWords {
  readonly level: string;
  readonly style?: string;
  readonly swing: string;
  readonly latency: string;
  readonly notes: boolean;
  readonly json: boolean;
}

/** Gives `reedplate score` its options and what it does. */
export function setUpScore(verb: Command, terminal: Terminal): void {
  withJson(withMaybeHarpOptions(withChartForLineOptions(verb), HARP))
    .argument(
      '<take>',
      'file of the take: a line as JSON, MIDI, MusicXML, ABC or tab; - for standard input',
    )
    .option('--level <level>', `what suggestions may ask for: ${LEVELS}`, 'bends')
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
      '--latency <ticks>',
      'how late the whole take lies, 960 ticks to the quarter note, or estimate',
      '0',
    )
    .option('--notes', 'also why each note counts as it does', false)
    .addHelpText('after', `\n${TERMS.join('\n')}`)
    .addHelpText(
      'after',
      examples(
        'reedplate score take.json --form quick-change --key G --harp C',
        'reedplate score take.json --key Am --style minor --latency estimate --notes',
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
        (report, paint) => [
          ...showScore(report, paint),
          ...(words.notes ? showNotes(report.score, paint) : []),
        ],
      );
    });
}

function readScoreOptions(words: ScoreWords): ScoreOptions {
  const { level, style, swing, latency } = words;
  return {
    level: level as TechniqueLevel,
    swing: readEstimate(swing),
    latency: readEstimate(latency),
    ...(style === undefined ? {} : { style: style as PlayingStyle }),
  };
}

/** A number or `estimate`; any other word is handed on, to be refused by name. */
function readEstimate(word: string): number | 'estimate' {
  const number = Number(word);
  return Number.isNaN(number) || word.trim() === '' ? (word as 'estimate') : number;
}

const HARP = 'harp at hand, for suggestions as tab; a take in tab needs it';

const LEVELS = TECHNIQUE_LEVELS.join(', ');

/** What the words of the print mean, for the help. */
const TERMS = [
  'What is printed:',
  '  of 100       40 is what typical solos reach with their notes shuffled, 80 what',
  '               good players reach',
  '  any order    what these very notes would reach on average if they were shuffled',
  '  confidence   how often so many notes of a good player outscore their own',
  '               shuffle: 50 % is a toss of a coin',
  '  fit          what the notes are worth to their chords, the ground of the total:',
  '               a chord tone all, a note that resolves most, a clash nothing',
] as const;

function showScore(report: ScoreReport, paint: Paint): readonly string[] {
  const { score, remarks } = report;
  const total = paint('heading', `${Math.round(score.total)} of 100`);
  const chance = `in any order these notes would reach ${Math.round(score.chance)}`;
  return [
    paint('heading', titleOf(report)),
    '',
    `${total}   ${chance}; confidence ${percent(score.confidence)}`,
    paint('remark', sayManner(score)),
    '',
    ...showMeasures(score.measures),
    '',
    ...showBars(score, paint),
    '',
    ...showChanges(score.changes, paint),
    ...(remarks.length === 0 ? [] : ['', paint('heading', 'remarks')]),
    ...remarks.map((remark) => `  ${remark}`),
  ];
}

/** How the take was heard: what was estimated may be wrong, and can be told. */
function sayManner({ style, alignment: { swing, latency } }: Score): string {
  const eighths = swing === 1 ? 'even eighths' : `eighths swung ${swing} to 1`;
  const late =
    latency === 0 ? '' : `, ${Math.abs(latency)} ticks ${latency > 0 ? 'late' : 'early'}`;
  return `judged as ${style}, heard as ${eighths}${late}`;
}

function titleOf({ title, form, key, harp }: ScoreReport): string {
  return `${title ?? 'take'}: ${form} in ${key}${harp === null ? '' : ` on the ${sayHarp(harp)}`}`;
}

const MEASURE_NAMES: readonly (readonly [keyof ScoreMeasures, string])[] = [
  ['fit', 'fit of the notes to their chords: most of the total'],
  ['landing', 'landing: what sounds when the chord changes'],
  ['coverage', 'changes shown: by the new root, or a tone the chord before lacked'],
  ['chordToneShare', 'time on chord tones, more on strong beats'],
  ['guideToneShare', 'time on thirds and sevenths, more on strong beats'],
  ['resolution', 'notes outside the chord that resolve, more if at once'],
  ['clashTime', 'time on clashes: less is better'],
  ['timing', 'onsets near halves, thirds and quarters of the beat'],
];

function showMeasures(measures: ScoreMeasures): readonly string[] {
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
  'degrees above the root; * blue or colour, ( ) resolves, ? does not, ! clashes, _ held over the change, > struck before it';

function sayNote({ degree, class: kind, held, push }: NoteScore): string {
  const [before, after] = MARK_OF_CLASS[kind];
  return `${held ? '_' : ''}${push ? '>' : ''}${before}${degree ?? '-'}${after}`;
}

function showChanges(changes: readonly ChangeScore[], paint: Paint): readonly string[] {
  const rows = changes.map(({ bar, beat, chord, class: kind, landing, shown }) => [
    `${bar}:${Math.round(beat * 100) / 100}`,
    chord,
    kind ?? 'rest',
    landing === null ? '' : percent(landing),
    shown === false ? 'not shown' : '',
  ]);
  const [head = '', ...body] = setColumns([['change', 'chord', 'lands on', '', ''], ...rows]);
  return [paint('heading', head), ...body];
}

function showNotes({ notes }: Score, paint: Paint): readonly string[] {
  return ['', paint('heading', 'notes'), ...notes.map((note) => `  ${describeNote(note)}`)];
}

function percent(share: number | null): string {
  return share === null ? '-' : `${Math.round(share * 100)} %`;
}
