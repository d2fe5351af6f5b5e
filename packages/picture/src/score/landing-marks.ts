import type { ChangeScore } from '@reedplate/chord-tone';
import { path } from '../svg/draw.js';
import type { SvgNode } from '../svg/node.js';
import type { Theme } from '../theme/theme.js';
import { markOfClass, type NoteMark } from './class-marks.js';

/** How a change landed: on a tone of the chord, on a note that fits it, outside it, or in a rest. */
export type Landing = 'tone' | 'fitting' | 'outside' | 'rest';

const LANDINGS: Readonly<Record<NoteMark, Landing>> = Object.freeze({
  root: 'tone',
  guide: 'tone',
  tone: 'tone',
  style: 'fitting',
  leading: 'fitting',
  unresolved: 'outside',
  clash: 'outside',
  unjudged: 'outside',
});

/** How a change landed. */
export function landingOf({ class: noteClass }: Pick<ChangeScore, 'class'>): Landing {
  return noteClass === null ? 'rest' : LANDINGS[markOfClass(noteClass)];
}

/** Landings in words, in the order of a legend. */
export const LANDING_WORDS: Readonly<Record<Landing, string>> = Object.freeze({
  tone: 'lands on the chord',
  fitting: 'lands on a note that fits',
  outside: 'lands outside',
  rest: 'rest at the change',
});

/**
 * Draws how a change landed, as an arrow down to it: thick onto the chord, thin onto a note that fits,
 * struck out where it lands outside; a dash for a rest.
 */
export function landingMark(
  landing: Landing,
  { x, y, radius: r }: { readonly x: number; readonly y: number; readonly radius: number },
  { ink, faint }: Theme,
): readonly SvgNode[] {
  if (landing === 'rest') return [stroke([x - r, y], [x + r, y], faint, r * 0.4)];
  const width = landing === 'tone' ? r * 0.5 : r * 0.22;
  const arrow = [
    stroke([x, y - r], [x, y + r], ink, width),
    path(
      [
        [x - r * 0.7, y + r * 0.2],
        [x, y + r],
        [x + r * 0.7, y + r * 0.2],
      ],
      { stroke: ink, strokeWidth: width },
    ),
  ];
  if (landing !== 'outside') return arrow;
  return [...arrow, stroke([x - r, y - r * 0.9], [x + r, y + r * 0.3], ink, r * 0.4)];
}

type Point = readonly [number, number];

function stroke(from: Point, to: Point, colour: string, strokeWidth: number): SvgNode {
  return path([from, to], { stroke: colour, strokeWidth });
}
