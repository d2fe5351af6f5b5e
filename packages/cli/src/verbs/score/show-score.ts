import {
  type ChangeScore,
  describeFeedback,
  describeNote,
  describeVerdict,
  type NoteClass,
  type NoteScore,
  type Reading,
  type Score,
  type ScoreMeasures,
} from '@reedplate/chord-tone';
import { count } from '../../shared/count.js';
import type { Paint } from '../../shared/print.js';
import { sayHarp } from '../../shared/say-harp.js';
import { setColumns } from '../../shared/table.js';

/** What the score itself does not say. */
interface Told {
  /** Which part of the file was judged; undefined where it has but one. */
  readonly part: string | undefined;
}

/** The verdict, the total, what to do next, and where it stands. */
export function showScore(score: Score, { part }: Told, paint: Paint): readonly string[] {
  const { feedback } = score;
  return [
    paint('heading', titleOf(score)),
    ...(part === undefined ? [] : [paint('aside', part)]),
    '',
    paint('heading', describeVerdict(score.verdict)),
    ...sayCountIn(score),
    `${paint('heading', `${Math.round(score.total)} of 100`)}   ${paint('aside', sayManner(score))}`,
    ...(feedback.length === 0 ? [] : ['', paint('heading', 'feedback')]),
    ...feedback.map((remark, at) => `  ${at + 1}  ${describeFeedback(remark)}`),
    '',
    ...showMeasures(score.measures),
    '',
    ...showBars(score, paint),
    '',
    ...showChanges(score.changes, paint),
  ];
}

/** What was taken for a count-in, and how to say that there was one. */
function sayCountIn({ alignment, verdict }: Score): readonly string[] {
  const { countIn } = alignment;
  if (countIn > 0) return [`A count-in of ${count(countIn, 'bar')} was taken off.`];
  return verdict.code === 'TAKE_BARS_LATE' ? [`If it does, say so: --count-in ${verdict.by}`] : [];
}

/** How the take was heard: what was estimated may be wrong, and can be told. */
function sayManner({ style, alignment: { swing, latency } }: Score): string {
  const eighths = swing === 1 ? 'even eighths' : `eighths swung ${swing} to 1`;
  const late =
    latency === 0 ? '' : `, ${Math.abs(latency)} ticks ${latency > 0 ? 'late' : 'early'}`;
  return `judged as ${style}, heard as ${eighths}${late}`;
}

function titleOf({ title, form, key, harp }: Score): string {
  return `${title ?? 'take'}: ${form} in ${key}${harp === null ? '' : ` on the ${sayHarp(harp)}`}`;
}

const MEASURE_NAMES: readonly (readonly [keyof ScoreMeasures, string])[] = [
  ['chordFit', 'of what you played fits its chord'],
  ['following', 'follows the changes: it would not fit without them'],
  ['coverage', 'of the changes can be heard'],
  ['landing', 'on the changes themselves'],
  ['chordToneShare', 'of the time on chord tones'],
  ['guideToneShare', 'of the time on thirds and sevenths'],
  ['resolution', 'of the notes outside the chord lead on, and soon'],
  ['clashTime', 'of the time on clashes'],
  ['timing', 'in time'],
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
  const rows = bars
    .filter(({ chords }) => chords.length > 0)
    .map(({ bar, chords, chordFit }) => [
      `${bar}`,
      chords.join(' '),
      chordFit === null ? '' : '='.repeat(Math.round(chordFit * STRIP)).padEnd(STRIP, '.'),
      chordFit === null ? 'rest' : percent(chordFit),
      (played.get(bar) ?? []).join(' '),
    ]);
  const head = ['bar', 'chord', 'chord fit', '', 'degrees played'];
  const [first = '', ...body] = setColumns([head, ...rows]);
  return [paint('heading', first), ...body, '', paint('aside', MARKS)];
}

/** What stands around a degree to say what the note is to its chord. */
const MARK_OF_CLASS: Readonly<Record<NoteClass, readonly [string, string]>> = {
  root: ['', ''],
  'guide-tone': ['', ''],
  'chord-tone': ['', ''],
  idiom: ['', '*'],
  blue: ['', '*'],
  colour: ['', '*'],
  passing: ['(', ')'],
  neighbour: ['(', ')'],
  approach: ['(', ')'],
  leaning: ['(', ')'],
  unresolved: ['', '?'],
  clash: ['', '!'],
  unjudged: ['', ''],
};

const MARKS =
  'degrees above the root; * blue, turn or colour, ( ) resolves, ? does not, ! clashes, _ held over the change, > struck before it';

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

/** How the total comes about, and every note. */
export function showWhy(score: Score, paint: Paint): readonly string[] {
  const { following, readings, confidence, notes } = score;
  const best = readings.filter(({ explains }) => explains > 0);
  best.sort((one, other) => other.explains - one.explains);
  return [
    '',
    paint('heading', 'how the total comes about'),
    `  ${percent(confidence)} sure: so often do as many notes of a good player outscore their own shuffle`,
    ...(following === null
      ? ['  one chord throughout: there is nothing to follow']
      : [
          `  ${percent(following.shuffled)} is what the same notes would fit in any order`,
          `  ${percent(following.blind)} is what the line would fit over each chord held throughout`,
        ]),
    ...best
      .slice(0, 3)
      .map((reading) => `  ${percent(reading.explains)} of what was lost: ${sayReading(reading)}`),
    '',
    paint('heading', 'notes'),
    ...notes.map((note) => `  ${describeNote(note)}`),
  ];
}

function sayReading({ kind, by }: Reading): string {
  const late = by > 0 ? 'late' : 'early';
  switch (kind) {
    case 'other-harp':
      return `read as if in a key ${count(Math.abs(by), 'semitone')} ${by > 0 ? 'higher' : 'lower'}`;
    case 'bars-off':
      return `read as if ${count(Math.abs(by), 'bar')} ${late}`;
    case 'beats-off':
      return `read as if ${count(Math.abs(by), 'beat')} ${late}`;
    case 'one-chord':
      return 'read over the first chord throughout';
    case 'chord-missed':
      return `read as if there were no chord ${count(by, 'semitone')} above the tonic`;
  }
}

/** A share as it is printed. */
export function percent(share: number | null): string {
  return share === null ? '-' : `${Math.round(share * 100)} %`;
}
