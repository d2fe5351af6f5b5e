import { disc, path, type ShapeLook } from './draw.js';
import type { SvgNode } from './node.js';

/** Shapes that tell things apart where colour does not. */
export type Shape = 'disc' | 'diamond' | 'up' | 'down' | 'square' | 'hexagon';

/** Corners around the middle, in shares of the radius. */
const CORNERS: Readonly<Record<Exclude<Shape, 'disc'>, readonly (readonly [number, number])[]>> =
  Object.freeze({
    diamond: corners([0, -1.1], [1.1, 0], [0, 1.1], [-1.1, 0]),
    up: corners([0, -1], [1, 0.8], [-1, 0.8]),
    down: corners([0, 1], [1, -0.8], [-1, -0.8]),
    square: corners([-0.85, -0.85], [0.85, -0.85], [0.85, 0.85], [-0.85, 0.85]),
    hexagon: corners([-1, 0], [-0.5, -0.9], [0.5, -0.9], [1, 0], [0.5, 0.9], [-0.5, 0.9]),
  });

function corners(...points: readonly (readonly [number, number])[]) {
  return Object.freeze(points);
}

/** Draws a shape around a point. */
export function shape(kind: Shape, x: number, y: number, radius: number, look: ShapeLook): SvgNode {
  return kind === 'disc'
    ? disc(x, y, radius, look)
    : polygon(CORNERS[kind], x, y, radius, radius, look);
}

/** Draws a shape as wide and high as is asked, to hold text. */
export function wideShape(
  kind: Exclude<Shape, 'disc'>,
  { x, y, halfWidth, halfHeight }: WideShape,
  look: ShapeLook,
): SvgNode {
  return polygon(CORNERS[kind], x, y, halfWidth, halfHeight, look);
}

/** Where a wide shape lies. */
export interface WideShape {
  readonly x: number;
  readonly y: number;
  readonly halfWidth: number;
  readonly halfHeight: number;
}

function polygon(
  points: readonly (readonly [number, number])[],
  x: number,
  y: number,
  halfWidth: number,
  halfHeight: number,
  look: ShapeLook,
): SvgNode {
  const placed = points.map(([dx, dy]) => [x + dx * halfWidth, y + dy * halfHeight] as const);
  return path([...placed, placed[0] ?? [x, y]], look);
}
