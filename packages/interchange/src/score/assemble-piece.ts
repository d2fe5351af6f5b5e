import type { Feel } from '@reedplate/form';
import { type Line, type Metre, makeLine, parseMetre } from '@reedplate/line';
import { deepFreeze, type KeyName } from '@reedplate/pitch';
import { choosePart } from '../choose-part.js';
import type { Piece, PiecePart } from '../piece.js';
import type { WarningList } from '../warning.js';
import { chartOfMarks } from './chart-of-marks.js';
import { type LaidMeasures, layMeasures } from './lay-measures.js';
import type { Measure } from './measure.js';
import { asWritten, planOrder } from './plan-order.js';

/** A voice or staff, bar by bar. */
export interface WrittenPart {
  readonly name: string;
  readonly program?: number;
  readonly measures: readonly Measure[];
}

/** A score as written, repeats not yet played. */
export interface WrittenScore {
  readonly title?: string;
  readonly key?: KeyName;
  readonly metre: Metre;
  /** Quarter notes a minute. */
  readonly quartersPerMinute?: number;
  /** Default straight. */
  readonly feel?: Feel;
  readonly parts: readonly WrittenPart[];
  /** Labels of the parts of the tune in the order they are played. */
  readonly partOrder?: readonly string[];
}

/** How scores with repeats are read. */
export interface ReadScoreOptions {
  /** Whether repeats are played out; default true. False reads each written bar once. */
  readonly repeats?: boolean;
  /** The part that is the line: its number among those with notes, from 1, or its name; default the first. */
  readonly part?: number | string;
}

interface PlayedPart {
  readonly written: WrittenPart;
  readonly laid: LaidMeasures;
}

/** Plays a written score: its lines, and the chart of its chord symbols. */
export function assemblePiece(
  score: WrittenScore,
  warnings: WarningList,
  { repeats = true, part }: ReadScoreOptions,
): Piece {
  const { barTicks } = parseMetre(score.metre);
  const orderOf = repeats ? planOrder(score, warnings) : asWritten;
  const played = score.parts.map((written): PlayedPart => {
    const order = orderOf(written.measures);
    return { written, laid: layMeasures(written.measures, order, { barTicks, warnings }) };
  });
  const head = { ...headOf(score), pickup: played[0]?.laid.pickup ?? 0 };
  const parts = played
    .filter(({ laid }) => laid.notes.length > 0)
    .map((part) => toPart(part, head));
  if (parts.length === 0) warnings.add('notes-missing');
  const chart = chartOfMarks(
    played.find(({ laid }) => laid.chords.length > 0)?.laid.chords ?? [],
    {
      ...head,
      form: 'lead-sheet',
      key: score.key ?? 'C',
      feel: score.feel ?? 'straight',
      end: Math.max(0, ...played.map(({ laid }) => laid.end)),
    },
    warnings,
  );
  return deepFreeze({
    line: choosePart(parts, part, ([first]) => first)?.line ?? makeLine([], head),
    ...(score.key === undefined ? {} : { key: score.key }),
    ...(chart === undefined ? {} : { chart }),
    parts,
    warnings: warnings.all(),
  });
}

type LineHead = Pick<Line, 'metre' | 'pickup' | 'tempo' | 'title'>;

const FASTEST_TEMPO = 1000;

/** Tempo in felt beats: of 6/8 at 180 quarters a minute, 120 dotted quarters. */
function headOf({ title, metre, quartersPerMinute }: WrittenScore): Omit<LineHead, 'pickup'> {
  const { beatTicks, barTicks, numerator, denominator } = parseMetre(metre);
  const quarterTicks = (barTicks * denominator) / (numerator * 4);
  const tempo = quartersPerMinute && (quartersPerMinute * quarterTicks) / beatTicks;
  return {
    metre,
    ...(tempo && tempo <= FASTEST_TEMPO ? { tempo } : {}),
    ...(title === undefined ? {} : { title }),
  };
}

function toPart({ written, laid }: PlayedPart, head: LineHead): PiecePart {
  const { name, program } = written;
  return {
    name,
    ...(program === undefined ? {} : { program }),
    line: makeLine(laid.notes, head),
  };
}
