import type { Feel } from '@reedplate/form';
import { type Line, type Metre, makeLine, parseMetre, TICKS_PER_QUARTER } from '@reedplate/line';
import { deepFreeze, type KeyName, type OptionNames } from '@reedplate/pitch';
import { choosePart, findFirst } from '../choose-part.js';
import type { Piece, PiecePart } from '../piece.js';
import type { WarningList } from '../warning.js';
import { chartOfMarks } from './chart-of-marks.js';
import { type LaidMeasures, layMeasures, type TempoMark } from './lay-measures.js';
import type { Measure } from './measure.js';
import { asWritten, planOrder } from './plan-order.js';

/** A voice or staff, bar by bar. */
export interface WrittenPart {
  readonly name: string;
  readonly program?: number;
  readonly measures: readonly Measure[];
}

/** A score as written, repeats not yet played. */
export interface WrittenNotation {
  readonly title?: string;
  readonly key?: KeyName;
  readonly metre: Metre;
  /** Quarter notes a minute at the beginning; measures may say so too. */
  readonly quartersPerMinute?: number;
  /** Bars counted in, among the first measures. */
  readonly countIn?: number;
  /** Default straight. */
  readonly feel?: Feel;
  readonly parts: readonly WrittenPart[];
  /** Labels of the parts of the tune in the order they are played. */
  readonly partOrder?: readonly string[];
}

/** How scores with repeats are read. */
export interface ReadNotationOptions {
  /** Whether repeats are played out; default true. False reads each written bar once. */
  readonly repeats?: boolean;
  /** The part that is the line: its number among those with notes, from 1, or its name; default the first. */
  readonly part?: number | string;
}

/** The names of the options of reading notation. */
export const READ_NOTATION_OPTIONS: OptionNames<ReadNotationOptions> = {
  repeats: true,
  part: true,
};

interface PlayedPart {
  readonly written: WrittenPart;
  readonly laid: LaidMeasures;
}

/** Plays a written score: its lines, and the chart of its chord symbols. */
export function assemblePiece(
  score: WrittenNotation,
  warnings: WarningList,
  { repeats = true, part }: ReadNotationOptions,
): Piece {
  const { barTicks } = parseMetre(score.metre);
  const orderOf = repeats ? planOrder(score, warnings) : asWritten;
  const played = score.parts.map((written): PlayedPart => {
    const order = orderOf(written.measures);
    return { written, laid: layMeasures(written.measures, order, { barTicks, warnings }) };
  });
  const pickup = played[0]?.laid.pickup ?? 0;
  const tempos = played.flatMap(({ laid }) => laid.tempos);
  const head = { ...headOf(score, pickup, warnings), ...temposOf(score, tempos, warnings) };
  const parts = played
    .filter(({ laid }) => laid.notes.length > 0)
    .map((part) => toPart(part, head));
  if (parts.length === 0) warnings.add('notes-missing');
  // Bar 1 of the chart is bar 1 of the line: the count-in is before it.
  const counted = (head.countIn ?? 0) * barTicks;
  const marks = played.find(({ laid }) => laid.chords.length > 0)?.laid.chords ?? [];
  const chart = chartOfMarks(
    marks.map((mark) => ({ ...mark, start: mark.start - counted })),
    {
      ...head,
      form: 'lead-sheet',
      key: score.key ?? 'C',
      feel: score.feel ?? 'straight',
      end: Math.max(0, ...played.map(({ laid }) => laid.end)) - counted,
    },
    warnings,
  );
  const chosen = choosePart(parts, part, findFirst);
  return deepFreeze({
    line: chosen?.part.line ?? makeLine([], head),
    ...(chosen === undefined ? {} : { choice: chosen.choice }),
    ...(score.key === undefined ? {} : { key: score.key }),
    ...(chart === undefined ? {} : { chart }),
    parts,
    warnings: warnings.all(),
  });
}

type LineHead = Omit<Line, 'notes'>;

function headOf(
  { title, metre, countIn }: WrittenNotation,
  pickup: number,
  warnings: WarningList,
): Pick<Line, 'metre' | 'pickup' | 'countIn' | 'title'> {
  // A pickup leaves no room for bars before it.
  const hasCountIn = countIn !== undefined && pickup === 0;
  if (countIn !== undefined && !hasCountIn) warnings.add('field-unknown', {}, 'a count-in');
  return {
    metre,
    pickup,
    ...(hasCountIn ? { countIn } : {}),
    ...(title === undefined ? {} : { title }),
  };
}

const FASTEST_TEMPO = 1000;

/**
 * The tempo of the beginning, which is the first that is said, and its changes, in felt beats: of 6/8 at
 * 180 quarters a minute, 120 dotted quarters. All parts may say the same.
 */
function temposOf(
  { metre, quartersPerMinute }: WrittenNotation,
  marks: readonly TempoMark[],
  warnings: WarningList,
): Pick<Line, 'tempo' | 'tempoChanges'> {
  const { beatTicks } = parseMetre(metre);
  const head = quartersPerMinute === undefined ? [] : [{ start: 0, quarters: quartersPerMinute }];
  const tempoAt = new Map<number, number>();
  for (const { start, quarters } of [...head, ...marks]) {
    const tempo = (quarters * TICKS_PER_QUARTER) / beatTicks;
    if (tempo > FASTEST_TEMPO) warnings.add('field-unknown', {}, `a tempo of ${quarters}`);
    else if (!tempoAt.has(start)) tempoAt.set(start, tempo);
  }
  const [first, ...others] = [...tempoAt].sort(([a], [b]) => a - b);
  if (first === undefined) return {};
  let [, before] = first;
  const tempoChanges = others.flatMap(([start, tempo]) => {
    const isNew = tempo !== before;
    before = tempo;
    return isNew ? [{ start, tempo }] : [];
  });
  return { tempo: first[1], tempoChanges };
}

function toPart({ written, laid }: PlayedPart, head: LineHead): PiecePart {
  const { name, program } = written;
  return {
    name,
    ...(program === undefined ? {} : { program }),
    line: makeLine(laid.notes, head),
  };
}
