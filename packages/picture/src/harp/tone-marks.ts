import type { ChordDegree } from '@reedplate/pitch';
import type { ShapeLook } from '../svg/draw.js';
import type { SvgNode } from '../svg/node.js';
import { shape, wideShape } from '../svg/shapes.js';
import type { Shade, Theme } from '../theme/theme.js';

/** What a chord tone is, for its shape: the root, a third, a fifth, a seventh or sixth, or another. */
export type ToneKind = 'root' | 'third' | 'fifth' | 'seventh' | 'other';

const KINDS: ReadonlyMap<ChordDegree, ToneKind> = new Map<ChordDegree, ToneKind>([
  ['1', 'root'],
  ['b3', 'third'],
  ['3', 'third'],
  ['b5', 'fifth'],
  ['5', 'fifth'],
  ['#5', 'fifth'],
  ['6', 'seventh'],
  ['bb7', 'seventh'],
  ['b7', 'seventh'],
  ['7', 'seventh'],
]);

/** The words of each kind, in the order of a legend. */
export const TONE_WORDS: Readonly<Record<ToneKind, string>> = Object.freeze({
  root: 'root',
  third: 'third',
  fifth: 'fifth',
  seventh: 'sixth or seventh',
  other: 'other tone',
});

/** What a degree is, for its shape. */
export function toneKind(degree: ChordDegree): ToneKind {
  return KINDS.get(degree) ?? 'other';
}

/** Where a mark lies around text. */
export interface MarkPlace {
  readonly x: number;
  readonly y: number;
  /** Half the width and height that the mark must hold. */
  readonly halfWidth: number;
  readonly halfHeight: number;
}

/** Draws the shape of a chord tone: only the root is filled with the strong colour. */
export function toneMark(kind: ToneKind, place: MarkPlace, shade: Shade): SvgNode {
  const { x, y, halfWidth, halfHeight } = place;
  const look: ShapeLook = { fill: shade.tint, stroke: shade.strong, strokeWidth: 1.5 };
  if (kind === 'root') {
    const filled = { fill: shade.strong, stroke: shade.strong };
    return shape('disc', x, y, Math.min(halfWidth, halfHeight) * 1.08, filled);
  }
  if (kind === 'third') return wideShape('hexagon', place, look);
  if (kind === 'fifth') return wideShape('square', { ...place, halfWidth: halfWidth * 1.1 }, look);
  if (kind === 'seventh') {
    const room = { halfWidth: halfWidth * 1.15, halfHeight: halfHeight * 1.1 };
    return wideShape('diamond', { ...place, ...room }, look);
  }
  return wideShape('up', place, look);
}

/** The colour of text on the mark of a chord tone. */
export function inkOnMark(kind: ToneKind, shade: Shade, theme: Theme): string {
  return kind === 'root' ? theme.paper : shade.strong;
}
