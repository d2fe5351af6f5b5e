import type { Breath } from '@reedplate/layout';
import type { Box } from '../svg/draw.js';
import { type Frame, SMALLEST_TEXT, tooNarrow } from '../svg/frame.js';
import { sizeToFit, textWidth } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';
import type { Bracket } from './brackets.js';
import type { PlacedCell } from './harp-cells.js';

/** Where everything lies on the picture of a harp. */
export interface HarpGrid {
  /** Size of the names in cells, and of what stands small beside them. */
  readonly size: number;
  readonly small: number;
  /** Size of a note's name below its degree: never larger than the degree. */
  readonly name: number;
  readonly cellWidth: number;
  readonly cellHeight: number;
  /** Left edge of a hole's column. */
  readonly xOf: (hole: number) => number;
  /** The cell of a sounding. */
  readonly cellBox: (cell: Pick<PlacedCell, 'hole' | 'breath' | 'rank'>) => Box;
  /** The line of a bracket. */
  readonly bracketY: (breath: Breath, lane: number) => number;
  readonly laneHeight: number;
  /** Row of the hole numbers. */
  readonly numbers: { readonly top: number; readonly height: number };
  readonly bottom: number;
}

/** What decides the size of a grid. */
export interface GridContent {
  readonly cells: readonly PlacedCell[];
  readonly brackets: readonly Bracket[];
  readonly holes: number;
  readonly mirrored: boolean;
  /** Whether degrees of a chord stand above the names. */
  readonly hasDegrees: boolean;
}

/** Words at the left of the two rows. */
export const ROW_WORDS: Readonly<Record<Breath, string>> = Object.freeze({
  blow: 'blow',
  draw: 'draw',
});

/** Lays the grid of a harp: blow above the hole numbers, draw below, bends outwards. */
export function layGrid(frame: Frame, content: GridContent): HarpGrid {
  const { cells, brackets, holes, mirrored, hasDegrees } = content;
  const small = Math.max(SMALLEST_TEXT, frame.theme.textSize * 0.8);
  const left = frame.left + textWidth('draw', small) + small * 0.5;
  const cellWidth = (frame.right - left) / holes;
  const size = sizeOf(frame, content, cellWidth);
  const name = Math.min(small, size);
  const cellHeight = hasDegrees ? size * 1.85 + name * 1.3 : size * 2;
  const laneHeight = small * 0.9;
  const lanes = (breath: Breath): number =>
    Math.max(0, ...brackets.filter((each) => each.breath === breath).map(({ lane }) => lane + 1));
  const ranks = (breath: Breath): number =>
    Math.max(0, ...cells.filter((each) => each.breath === breath).map(({ rank }) => rank));
  const blowTop = frame.top + ranks('blow') * cellHeight;
  const numbersTop = blowTop + cellHeight + lanes('blow') * laneHeight;
  const numbersHeight = size * 1.7;
  const drawTop = numbersTop + numbersHeight + lanes('draw') * laneHeight;
  const xOf = (hole: number): number => left + (mirrored ? holes - hole : hole - 1) * cellWidth;
  return {
    size,
    small,
    name,
    cellWidth,
    cellHeight,
    xOf,
    cellBox: ({ hole, breath, rank }) => ({
      x: xOf(hole),
      y: breath === 'blow' ? blowTop - rank * cellHeight : drawTop + rank * cellHeight,
      width: cellWidth,
      height: cellHeight,
    }),
    bracketY: (breath, lane) =>
      breath === 'blow'
        ? numbersTop - (lane + 0.5) * laneHeight
        : numbersTop + numbersHeight + (lane + 0.5) * laneHeight,
    laneHeight,
    numbers: { top: numbersTop, height: numbersHeight },
    bottom: drawTop + (ranks('draw') + 1) * cellHeight,
  };
}

/** Room that shapes and edges need around the text of a cell. */
const ROOM = 1.7;

function sizeOf({ theme, width }: Frame, { cells, holes }: GridContent, cellWidth: number): number {
  const names = cells.flatMap(({ name, tone }) => [name, tone ?? ''].map(withSigns));
  const inner = Math.min(cellWidth - 4, cellWidth / ROOM + theme.textSize * 0.4);
  const size = sizeToFit(names, { width: inner, wanted: theme.textSize, weight: 'bold' });
  if (size >= SMALLEST_TEXT) return size;
  throw tooNarrow(width, (width * SMALLEST_TEXT) / size, `${holes} holes`);
}
