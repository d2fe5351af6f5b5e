import type { Weight } from '../text/text-width.js';
import { element, type SvgNode, writeNumber } from './node.js';

/** How a piece of text is set. */
export interface TextLook {
  readonly x: number;
  /** The line that letters stand on. */
  readonly y: number;
  readonly size: number;
  readonly fill: string;
  readonly weight?: Weight;
  /** Which part of the text stands at `x`; default its start. */
  readonly anchor?: 'start' | 'middle' | 'end';
}

/** Draws text. */
export function say(text: string, look: TextLook): SvgNode {
  const { x, y, size, fill, weight = 'normal', anchor = 'start' } = look;
  return element(
    'text',
    {
      x,
      y,
      'font-size': size,
      fill,
      ...(weight === 'bold' ? { 'font-weight': 'bold' } : {}),
      ...(anchor === 'start' ? {} : { 'text-anchor': anchor }),
    },
    [text],
  );
}

/** A letter of capital height reaches so much of its size above the line. */
const CAPITAL = 0.72;

/** Draws text whose capitals are centred on a point. */
export function sayAt(text: string, look: Omit<TextLook, 'anchor'>): SvgNode {
  return say(text, { ...look, y: look.y + (look.size * CAPITAL) / 2, anchor: 'middle' });
}

/** A rectangle by its corner. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How a shape is filled and outlined. */
export interface ShapeLook {
  readonly fill?: string;
  readonly stroke?: string;
  readonly strokeWidth?: number;
  /** Lengths of dash and gap. */
  readonly dash?: string;
  /** Radius of the corners. */
  readonly corner?: number;
}

/** Draws a rectangle. */
export function box({ x, y, width, height }: Box, look: ShapeLook): SvgNode {
  const { corner = 0 } = look;
  const rounded = corner === 0 ? {} : { rx: corner };
  return element('rect', { x, y, width, height, ...rounded, ...strokeOf(look) });
}

/** Draws straight lines from point to point; closed where the last is the first. */
export function path(points: readonly (readonly [number, number])[], look: ShapeLook): SvgNode {
  const [first, last] = [points[0], points.at(-1)];
  const isClosed = points.length > 2 && first?.[0] === last?.[0] && first?.[1] === last?.[1];
  const places = isClosed ? points.slice(0, -1) : points;
  const d = places.map(
    ([x, y], at) => `${at === 0 ? 'M' : 'L'}${writeNumber(x)} ${writeNumber(y)}`,
  );
  return element('path', { d: d.join('') + (isClosed ? 'Z' : ''), ...strokeOf(look) });
}

/** Draws a circle. */
export function disc(x: number, y: number, radius: number, look: ShapeLook): SvgNode {
  return element('circle', { cx: x, cy: y, r: radius, ...strokeOf(look) });
}

function strokeOf({ fill = 'none', stroke, strokeWidth = 1, dash }: ShapeLook) {
  return {
    fill,
    ...(stroke === undefined ? {} : { stroke, 'stroke-width': strokeWidth }),
    ...(dash === undefined ? {} : { 'stroke-dasharray': dash }),
  };
}
