import {
  GRID_IDS,
  type GridId,
  type Piece,
  type PieceFormatId,
  quantiseLine,
} from '@reedplate/interchange';
import type { Line } from '@reedplate/line';
import { ReedplateError, requireOneOf } from '@reedplate/pitch';
import { type Command, Option } from 'commander';
import { readList, readNumber } from '../../shared/read-words.js';

/** What says how a line is laid on a grid. */
export interface QuantiseWords {
  readonly quantise?: string;
  /** Another spelling of it. */
  readonly quantize?: string;
  readonly swing?: string;
}

/** Adds the options of a grid. */
export function withQuantiseOptions(command: Command): Command {
  return command
    .option(
      '--quantise <grids>',
      `grids to lay a take played by hand on, each beat on the nearest: ${GRID_IDS.join(', ')}`,
    )
    .addOption(new Option('--quantize <grids>', 'another spelling of --quantise').hideHelp())
    .option(
      '--swing <ratio>',
      'with --quantise: long to short eighth as played, to be written even',
    );
}

/**
 * The piece with its line and parts on the grids that the words name; as it is where they name none.
 *
 * @throws ReedplateError `USAGE` for a swing without a grid, and what `quantiseLine` throws
 */
export function quantisePiece(
  piece: Piece,
  { quantize, quantise = quantize, swing }: QuantiseWords,
): Piece {
  if (quantise === undefined) {
    if (swing === undefined) return piece;
    throw new ReedplateError({ code: 'USAGE', value: swing, expected: '--quantise with --swing' });
  }
  const options = {
    grid: readList(quantise).map(readGrid),
    ...(swing === undefined ? {} : { swing: readNumber(swing, 'long to short eighth') }),
  };
  const laid = new Map<Line, Line>();
  const lay = (line: Line): Line => {
    const known = laid.get(line) ?? quantiseLine(line, options);
    laid.set(line, known);
    return known;
  };
  const parts = piece.parts.map((part) => ({ ...part, line: lay(part.line) }));
  return { ...piece, line: lay(piece.line), parts };
}

function readGrid(word: string): GridId {
  return requireOneOf(word, GRID_IDS, { what: 'a grid' });
}

/** Formats that print note values. */
const PRINTED: ReadonlySet<PieceFormatId> = new Set(['musicxml', 'abc', 'tab']);

/** Ticks between places of binary note values and of triplets. */
const PRINTED_GRIDS = [30, 40];

/** Whether a line is to be printed that lies off every printed note value, as a take by hand does. */
export function needsGrid({ notes }: Line, to: PieceFormatId): boolean {
  const isOff = (tick: number): boolean => PRINTED_GRIDS.every((grid) => tick % grid !== 0);
  return (
    PRINTED.has(to) && notes.some(({ start, duration }) => isOff(start) || isOff(start + duration))
  );
}
