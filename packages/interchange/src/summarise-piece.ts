import { barBeatAt, type Metre } from '@reedplate/line';
import { type KeyName, requireShape } from '@reedplate/pitch';
import type { Piece, PiecePart } from './piece.js';
import { requireSheet } from './require-sheet.js';
import type { PieceWarning } from './warning.js';

/** A part of a piece, by what is in it. */
export interface PartSummary {
  /** Counted from 1. */
  readonly number: number;
  readonly name: string;
  /** General MIDI program, counted from 1, or null where none is given. */
  readonly program: number | null;
  readonly percussion: boolean;
  readonly notes: number;
}

/** What a piece holds, in figures. */
export interface PieceSummary {
  readonly title: string | null;
  readonly key: KeyName | null;
  readonly metre: Metre;
  /** Felt beats a minute, or null where none is given. */
  readonly tempo: number | null;
  /** Bars of the line, to the one its last note begins in. */
  readonly bars: number;
  readonly notes: number;
  /** Bars of the chart, or null where there is none. */
  readonly chartBars: number | null;
  readonly parts: readonly PartSummary[];
  /** What was left out on reading. */
  readonly warnings: readonly PieceWarning[];
}

const LISTS = { line: 'object', parts: 'list', warnings: 'list' } as const;
const PIECE = { what: 'a piece, as readPiece gives it', code: 'LINE_INVALID' } as const;

/**
 * What a piece that was read holds, in figures, and what was left out of it.
 *
 * @example
 * ```ts
 * import { readPiece, summarisePiece } from '@reedplate/interchange';
 *
 * const piece = readPiece('X:1\nT:Gate\nM:4/4\nL:1/4\nK:G\nGABc|d4|]\n');
 * const { title, key, bars, notes } = summarisePiece(piece);
 * [title, key, bars, notes]; // => ['Gate', 'G', 2, 5]
 * ```
 */
export function summarisePiece(piece: Piece): PieceSummary {
  const { line, key, chart, parts, warnings } = requireSheet(requireShape(piece, LISTS, PIECE));
  const last = line.notes.at(-1)?.start;
  return Object.freeze({
    title: line.title ?? null,
    key: key ?? null,
    metre: line.metre,
    tempo: line.tempo ?? null,
    bars: last === undefined ? 0 : barBeatAt(last, line).bar,
    notes: line.notes.length,
    chartBars: chart?.bars ?? null,
    parts: Object.freeze(parts.map(summarisePart)),
    warnings,
  });
}

function summarisePart({ name, program, percussion, line }: PiecePart, index: number): PartSummary {
  return Object.freeze({
    number: index + 1,
    name,
    program: program ?? null,
    percussion: percussion === true,
    notes: line.notes.length,
  });
}
