import type { Piece, PieceFormatId, PiecePart, PieceWarning } from '@reedplate/interchange';
import { barBeatAt } from '@reedplate/line';
import type { KeyName } from '@reedplate/pitch';

/** A part of a piece, by what is in it. */
export interface ConvertPart {
  /** Counted from 1: what `--part` takes. */
  readonly number: number;
  readonly name: string;
  /** General MIDI program, counted from 1, or null where none is given. */
  readonly program: number | null;
  readonly percussion: boolean;
  readonly notes: number;
}

/** What `reedplate convert --json` prints. */
export interface ConvertReport {
  readonly title: string | null;
  readonly to: PieceFormatId;
  readonly key: KeyName | null;
  readonly metre: string;
  /** Felt beats a minute, or null where none is given. */
  readonly tempo: number | null;
  /** Bars of the line, to the one its last note begins in. */
  readonly bars: number;
  readonly notes: number;
  /** Bars of the chart, or null where there is none. */
  readonly chartBars: number | null;
  readonly parts: readonly ConvertPart[];
  /** What was left out on reading. */
  readonly warnings: readonly PieceWarning[];
}

/**
 * What a piece that was read holds, and what was left out of it.
 *
 */
export function convertReport(piece: Piece, to: PieceFormatId): ConvertReport {
  const { line, key, chart, parts, warnings } = piece;
  const last = line.notes.at(-1)?.start;
  return {
    title: line.title ?? null,
    to,
    key: key ?? null,
    metre: line.metre,
    tempo: line.tempo ?? null,
    bars: last === undefined ? 0 : barBeatAt(last, line).bar,
    notes: line.notes.length,
    chartBars: chart?.bars ?? null,
    parts: parts.map(describePart),
    warnings,
  };
}

function describePart({ name, program, percussion, line }: PiecePart, index: number): ConvertPart {
  return {
    number: index + 1,
    name,
    program: program ?? null,
    percussion: percussion === true,
    notes: line.notes.length,
  };
}
