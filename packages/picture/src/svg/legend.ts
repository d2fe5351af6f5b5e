import { sizeToFit, textWidth } from '../text/text-width.js';
import { path, type ShapeLook, say } from './draw.js';
import { type Frame, SMALLEST_TEXT } from './frame.js';
import type { SvgNode } from './node.js';

/** A sign and what it means. */
export interface LegendItem {
  readonly label: string;
  /** Draws the sign around a point, within a radius. */
  readonly sign: (x: number, y: number, radius: number) => SvgNode;
}

/** A stretch of a line as a sign. */
export function lineSign(look: ShapeLook): LegendItem['sign'] {
  return (x, y, radius) =>
    path(
      [
        [x - radius, y],
        [x + radius, y],
      ],
      look,
    );
}

/** A legend, and where it ends. */
export interface Legend {
  readonly nodes: readonly SvgNode[];
  readonly bottom: number;
}

/** Sets signs and their meanings in rows below a picture. */
export function drawLegend(frame: Frame, items: readonly LegendItem[], top: number): Legend {
  const { theme, left, right } = frame;
  const wanted = Math.max(SMALLEST_TEXT, theme.textSize * 0.8);
  const labels = items.map(({ label }) => label);
  const room = right - left - wanted * 1.3;
  const size = Math.max(SMALLEST_TEXT, sizeToFit(labels, { width: room, wanted }));
  const radius = size * 0.45;
  const nodes: SvgNode[] = [];
  let x = left;
  let y = top + size;
  for (const { label, sign } of items) {
    const width = radius * 2.8 + textWidth(label, size) + size;
    if (x > left && x + width - size > right) {
      x = left;
      y += size * 1.6;
    }
    nodes.push(sign(x + radius, y - radius * 0.8, radius));
    nodes.push(say(label, { x: x + radius * 2.8, y, size, fill: theme.faint }));
    x += width;
  }
  return { nodes, bottom: items.length === 0 ? top : y + size * 0.4 };
}
