import type { NoteClass } from '@reedplate/chord-tone';
import { path } from '../svg/draw.js';
import type { SvgNode } from '../svg/node.js';
import { shape } from '../svg/shapes.js';
import type { Shade, Theme } from '../theme/theme.js';

/** What a note is drawn as: classes that a teacher would speak of alike share a mark. */
export type NoteMark =
  | 'root'
  | 'guide'
  | 'tone'
  | 'style'
  | 'leading'
  | 'unresolved'
  | 'clash'
  | 'unjudged';

const MARK_OF_CLASS: Readonly<Record<NoteClass, NoteMark>> = Object.freeze({
  root: 'root',
  'guide-tone': 'guide',
  'chord-tone': 'tone',
  idiom: 'style',
  blue: 'style',
  colour: 'style',
  passing: 'leading',
  neighbour: 'leading',
  approach: 'leading',
  leaning: 'leading',
  unresolved: 'unresolved',
  clash: 'clash',
  unjudged: 'unjudged',
});

/** The mark of a class. */
export function markOfClass(noteClass: NoteClass): NoteMark {
  return MARK_OF_CLASS[noteClass];
}

/** The marks in words, in the order of a legend. */
export const MARK_WORDS: Readonly<Record<NoteMark, string>> = Object.freeze({
  root: 'root',
  guide: 'third or seventh',
  tone: 'other chord tone',
  style: 'blue, turn or colour',
  leading: 'leads on',
  unresolved: 'outside, does not lead on',
  clash: 'clashes',
  unjudged: 'not judged',
});

/** Draws the mark of a note: chord tones filled, others hollow, a clash a cross. */
export function noteMark(
  mark: NoteMark,
  { x, y, radius }: MarkSpot,
  { theme, shade }: MarkLook,
): SvgNode {
  const filled = { fill: shade.strong, stroke: shade.strong };
  const hollow = { fill: theme.paper, stroke: shade.strong, strokeWidth: 1.75 };
  switch (mark) {
    case 'root':
      return shape('disc', x, y, radius, filled);
    case 'guide':
      return shape('hexagon', x, y, radius * 1.15, filled);
    case 'tone':
      return shape('square', x, y, radius, filled);
    case 'style':
      return shape('diamond', x, y, radius * 1.1, hollow);
    case 'leading':
      return shape('disc', x, y, radius * 0.65, hollow);
    case 'unresolved':
      return shape('up', x, y, radius * 1.1, { ...hollow, stroke: theme.ink });
    case 'clash':
      return cross(x, y, radius, theme.ink);
    case 'unjudged':
      return shape('disc', x, y, radius * 0.4, { fill: theme.faint });
  }
}

/** Where a mark lies. */
export interface MarkSpot {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/** What a mark is drawn in. */
export interface MarkLook {
  readonly theme: Theme;
  readonly shade: Shade;
}

/** Two strokes that cross in the middle, drawn as one. */
function cross(x: number, y: number, r: number, stroke: string): SvgNode {
  const points = [
    [x - r, y - r],
    [x + r, y + r],
    [x, y],
    [x - r, y + r],
    [x + r, y - r],
  ] as const;
  return path(points, { stroke, strokeWidth: r * 0.55 });
}
