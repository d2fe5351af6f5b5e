import { box, path, say, sayAt } from '../svg/draw.js';
import type { Frame } from '../svg/frame.js';
import type { LegendItem } from '../svg/legend.js';
import type { SvgNode } from '../svg/node.js';
import { sizeToFit } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';
import type { Shade, Theme } from '../theme/theme.js';
import { type Bracket, EXTENT_WORDS, type Extent } from './brackets.js';
import type { PlacedCell } from './harp-cells.js';
import { type HarpGrid, ROW_WORDS } from './harp-grid.js';
import { inkOnMark, TONE_WORDS, type ToneKind, toneKind, toneMark } from './tone-marks.js';

/** Draws a cell: its outline by technique, its name, and the degree of a chord tone in its shape. */
export function drawCell(
  cell: PlacedCell,
  grid: HarpGrid,
  { theme, shade, hasChord }: CellLook,
): readonly SvgNode[] {
  const { x, y, width, height } = grid.cellBox(cell);
  const middle = x + width / 2;
  const inner = { x: x + 1, y: y + 1, width: width - 2, height: height - 2 };
  const outline = box(inner, outlineOf(cell, theme, cell.tone === null ? undefined : shade));
  const name = withSigns(cell.name);
  if (cell.tone === null) {
    const fill = hasChord ? theme.faint : theme.ink;
    return [outline, sayAt(name, { x: middle, y: y + height / 2, size: grid.size, fill })];
  }
  const kind = toneKind(cell.tone);
  const centre = y + 1 + grid.size * 0.85;
  const half = {
    halfWidth: Math.min(width / 2 - 3, grid.size * 1.05),
    halfHeight: grid.size * 0.72,
  };
  return [
    outline,
    toneMark(kind, { x: middle, y: centre, ...half }, shade),
    sayAt(withSigns(cell.tone), {
      x: middle,
      y: centre,
      size: grid.size,
      fill: inkOnMark(kind, shade, theme),
      weight: 'bold',
    }),
    say(name, {
      x: middle,
      y: y + height - grid.name * 0.35,
      size: grid.name,
      fill: theme.ink,
      anchor: 'middle',
    }),
  ];
}

/** How cells are drawn. */
export interface CellLook {
  readonly theme: Theme;
  readonly shade: Shade;
  readonly hasChord: boolean;
}

function outlineOf({ sounding }: PlacedCell, theme: Theme, shade: Shade | undefined) {
  const stroke = shade?.strong ?? theme.rule;
  const strokeWidth = shade === undefined ? 1 : 1.5;
  if (sounding.technique === 'natural') return { fill: theme.paper, stroke, strokeWidth };
  if (sounding.technique === 'bend') return { fill: theme.paper, stroke, strokeWidth, corner: 7 };
  return { fill: theme.paper, stroke, strokeWidth, corner: 7, dash: '4 3' };
}

/** Draws the numbers of the holes and the words of the rows. */
export function drawNumbers(frame: Frame, grid: HarpGrid, holes: number): readonly SvgNode[] {
  const { theme, left } = frame;
  const { top, height } = grid.numbers;
  // In a narrow picture two numbers of two digits would meet.
  const size = sizeToFit([`${holes}`], {
    width: grid.cellWidth - 4,
    wanted: grid.size,
    weight: 'bold',
  });
  const numbers = Array.from({ length: holes }, (_, at) =>
    sayAt(`${at + 1}`, {
      x: grid.xOf(at + 1) + grid.cellWidth / 2,
      y: top + height / 2,
      size,
      fill: theme.ink,
      weight: 'bold',
    }),
  );
  const words = (['blow', 'draw'] as const).map((breath) => {
    const { y, height: high } = grid.cellBox({ hole: 1, breath, rank: 0 });
    const at = y + high / 2 + grid.small * 0.35;
    return say(ROW_WORDS[breath], { x: left, y: at, size: grid.small, fill: theme.faint });
  });
  return [...numbers, ...words];
}

/** Draws a bracket over neighbouring holes: dashed where only part of the chord lies together. */
export function drawBracket(bracket: Bracket, grid: HarpGrid, shade: Shade): SvgNode {
  const { breath, lane, extent } = bracket;
  const y = grid.bracketY(breath, lane);
  const foot = y + (breath === 'blow' ? -1 : 1) * grid.laneHeight * 0.4;
  const ends = [grid.xOf(bracket.from), grid.xOf(bracket.to)].sort((a, b) => a - b);
  const [from, to] = [(ends[0] ?? 0) + 4, (ends[1] ?? 0) + grid.cellWidth - 4];
  return bracketLine([from, to], [foot, y], shade, extent);
}

function bracketLine(
  [from, to]: readonly [number, number],
  [foot, y]: readonly [number, number],
  { strong }: Shade,
  extent: Extent,
): SvgNode {
  const points = [[from, foot] as const, [from, y] as const, [to, y] as const, [to, foot] as const];
  return path(points, {
    stroke: strong,
    strokeWidth: extent === 'part' ? 1.75 : 3,
    ...(extent === 'part' ? { dash: '5 3' } : {}),
  });
}

/** What the signs of a picture mean: only those that it has. */
export function harpLegend(
  cells: readonly PlacedCell[],
  brackets: readonly Bracket[],
  { theme, shade }: CellLook,
): readonly LegendItem[] {
  const kinds = new Set(cells.flatMap(({ tone }) => (tone === null ? [] : [toneKind(tone)])));
  const tones = (Object.keys(TONE_WORDS) as ToneKind[])
    .filter((kind) => kinds.has(kind))
    .map((kind) => ({
      label: TONE_WORDS[kind],
      sign: (x: number, y: number, r: number) =>
        toneMark(kind, { x, y, halfWidth: r, halfHeight: r }, shade),
    }));
  const outlines = [
    { label: 'bend', shown: isBend },
    { label: 'overbend', shown: isOverbend },
  ].flatMap(({ label, shown }) => {
    const cell = cells.find(shown);
    if (cell === undefined) return [];
    const look = outlineOf(cell, theme, undefined);
    return [
      {
        label,
        sign: (x: number, y: number, r: number) =>
          box({ x: x - r, y: y - r, width: 2 * r, height: 2 * r }, { ...look, corner: r * 0.6 }),
      },
    ];
  });
  const lines = (Object.keys(EXTENT_WORDS) as Extent[])
    .filter((extent) => brackets.some((bracket) => bracket.extent === extent))
    .map((extent) => ({
      label: EXTENT_WORDS[extent],
      sign: (x: number, y: number, r: number) =>
        bracketLine([x - r, x + r * 1.1], [y + r * 0.6, y - r * 0.4], shade, extent),
    }));
  return [...tones, ...outlines, ...lines];
}

const isBend = ({ sounding }: PlacedCell): boolean => sounding.technique === 'bend';
const isOverbend = ({ sounding }: PlacedCell): boolean =>
  sounding.technique === 'overblow' || sounding.technique === 'overdraw';
