import { type HarpCell, type HarpRow, harpRows } from '@reedplate/chord-tone';
import { BREATHS, type Breath, type Harp, type PlayerLike } from '@reedplate/layout';
import type { Chord, Key } from '@reedplate/pitch';

/** What the notes of a harp are called by: their names, or their degrees in the key of the song. */
export type HarpNames = 'notes' | 'degrees';

/** A sounding in its place on the picture of a harp. */
export interface PlacedCell extends Pick<HarpCell, 'hole' | 'sounding' | 'tone'> {
  readonly breath: Breath;
  /** Rows away from the row of the breath: 0 the unbent note, bends and the overbend outwards. */
  readonly rank: number;
  /** What it is called. */
  readonly name: string;
}

/** What cells are named and marked by. */
export interface CellNaming {
  readonly names: HarpNames;
  readonly key?: Key | undefined;
  readonly chord?: Chord | undefined;
  readonly level: PlayerLike;
}

/** Every sounding of a harp, hole by hole, blow before draw, each hole closed up towards its number. */
export function cellsOf(harp: Harp, naming: CellNaming): readonly PlacedCell[] {
  const rows = rowsOf(harp, naming);
  return harp.holes.flatMap(({ hole }) =>
    BREATHS.flatMap((breath) =>
      outwards(rows, breath)
        .flatMap(({ cells }) => cells.find((cell) => cell?.hole === hole) ?? [])
        .map((cell, rank) => ({
          hole,
          breath,
          rank,
          sounding: cell.sounding,
          tone: cell.tone,
          name: naming.names === 'degrees' ? (cell.degree ?? cell.name) : cell.name,
        })),
    ),
  );
}

/** Degrees without a song are those of first position. */
function rowsOf(harp: Harp, { names, key, chord, level }: CellNaming): readonly HarpRow[] {
  const named = key ?? (names === 'degrees' ? harp.firstPosition : undefined);
  return harpRows(harp, {
    level,
    ...(named === undefined ? {} : { key: named }),
    ...(chord === undefined ? {} : { chord }),
  });
}

/** The rows of a breath from the unbent notes outwards: those of `harpRows` lie from the top down. */
function outwards(rows: readonly HarpRow[], breath: Breath): readonly HarpRow[] {
  const own = rows.filter((row) => row.breath === breath);
  return breath === 'blow' ? own.reverse() : own;
}
