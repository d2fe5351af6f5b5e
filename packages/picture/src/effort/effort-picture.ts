import { harpName } from '@reedplate/layout';
import { requireOptions } from '@reedplate/pitch';
import {
  EFFORT_TERMS,
  type EffortTerm,
  type ExplainedStep,
  type PathExplanation,
} from '@reedplate/playability';
import { formatTab, markOf } from '@reedplate/tab';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { box, say } from '../svg/draw.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import type { SvgNode } from '../svg/node.js';
import { textWidth } from '../text/text-width.js';
import type { Theme } from '../theme/theme.js';
import { requireExplanation } from './require-explanation.js';

/** The terms of an effort in words. */
const TERM_WORDS: Readonly<Record<EffortTerm, string>> = Object.freeze({
  technique: 'bending',
  chord: 'chords',
  hold: 'holding bends',
  reach: 'reach',
  breath: 'breath changes',
  bendMove: 'into and out of bends',
  repeat: 'repeats',
  hurry: 'hurry',
  air: 'air',
});

/**
 * The effort of a path: a column for each note or chord, as high as it is hard, its tab below; then
 * what the effort is made of, a row for each term.
 *
 * @param explanation as `explainPath` gives it
 * @throws ReedplateError `NUMBER_RANGE` for the width
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 * import { effortPicture } from '@reedplate/picture';
 * import { explainPath } from '@reedplate/playability';
 *
 * const line = makeLine([
 *   { start: 0, duration: 960, pitch: 67 },
 *   { start: 960, duration: 960, pitch: 72 },
 * ]);
 * const explained = explainPath(line, makeHarp('C'));
 * if (!explained.playable) throw new Error('not playable');
 * effortPicture(explained).text.split('\n').at(-1); // => 'reach: 1 points'
 * ```
 */
export function effortPicture(explanation: PathExplanation, options: PictureOptions = {}): Picture {
  requireOptions(options, PICTURE_OPTIONS, 'effortPicture');
  const { path, steps, terms } = requireExplanation(explanation);
  const frame = makeFrame(
    options,
    `Effort on a ${harpName(path.harp)} harp: ${points(path.effort)}`,
  );
  const columns = drawColumns(frame, steps);
  const shown = EFFORT_TERMS.flatMap((term) => {
    const cost = terms[term] ?? 0;
    return cost > 0 ? [{ term, cost }] : [];
  });
  const rows = drawTerms(frame, shown, columns.bottom + frame.theme.textSize);
  return finishPicture(frame, {
    description:
      `${steps.length} notes or chords, ${points(path.effort)} in all, ` +
      `the hardest step ${points(path.worst)}. A column for each, then a row for each kind of effort.`,
    text: [
      frame.title,
      ...steps.map(stepInText),
      ...shown.map(({ term, cost }) => `${TERM_WORDS[term]}: ${points(cost)}`),
    ].join('\n'),
    nodes: [...columns.nodes, ...rows.nodes],
    bottom: rows.bottom,
  });
}

const round = (value: number): number => Math.round(value * 10) / 10;
const points = (value: number): string => `${round(value)} points`;
const labelOf = ({ soundings }: ExplainedStep): string => formatTab([soundings.map(markOf)]);

function stepInText(step: ExplainedStep): string {
  const { bar, beat, effort } = step;
  return `bar ${bar} beat ${Math.round(beat * 100) / 100}: ${labelOf(step)}, ${points(effort)}`;
}

/** Columns in as many rows as it takes to keep the tab below them apart. */
function drawColumns(frame: Frame, steps: readonly ExplainedStep[]) {
  const { theme, left, right, top } = frame;
  const size = Math.max(10, theme.textSize * 0.85);
  const small = Math.max(10, theme.textSize * 0.7);
  const most = Math.max(...steps.map(({ effort }) => effort), 0.001);
  const widest = Math.max(
    ...steps.map((step) =>
      Math.max(textWidth(labelOf(step), size, 'bold'), textWidth(`${round(step.effort)}`, small)),
    ),
  );
  const fitting = Math.floor((right - left) / (widest + 6));
  const inRow = Math.max(1, Math.min(steps.length, fitting));
  const slot = Math.min((right - left) / inRow, widest * 2.5);
  const tallest = theme.textSize * 5;
  const heightOf = (effort: number): number => (effort / most) * tallest;
  const nodes: SvgNode[] = [];
  let y = top;
  for (let first = 0; first < steps.length; first += inRow) {
    const row = steps.slice(first, first + inRow);
    // A row is as high as its hardest step: easy rows take little paper.
    const ground = y + small * 1.4 + Math.max(...row.map(({ effort }) => heightOf(effort)));
    const look = { theme, size, small, slot, ground };
    for (const [at, step] of row.entries()) {
      nodes.push(...drawColumn(step, { x: left + at * slot, height: heightOf(step.effort) }, look));
    }
    y = ground + size * 1.9;
  }
  return { nodes, bottom: y };
}

interface ColumnLook {
  readonly theme: Theme;
  readonly size: number;
  readonly small: number;
  /** Width that a column has. */
  readonly slot: number;
  /** The line that columns stand on. */
  readonly ground: number;
}

function drawColumn(
  step: ExplainedStep,
  { x, height }: { readonly x: number; readonly height: number },
  { theme, size, small, slot, ground }: ColumnLook,
): readonly SvgNode[] {
  const word = { x: x + slot / 2, fill: theme.ink, anchor: 'middle' as const };
  const { tint, strong } = theme.chords.other;
  const place = { x: x + 2, y: ground - height, width: slot - 4, height };
  return [
    box(place, { fill: tint, stroke: strong, strokeWidth: 1.5 }),
    say(`${round(step.effort)}`, { ...word, y: ground - height - 3, size: small }),
    say(labelOf(step), { ...word, y: ground + size * 1.15, size, weight: 'bold' }),
  ];
}

interface TermCost {
  readonly term: EffortTerm;
  readonly cost: number;
}

/** A row for each term: its word, a bar and its points; where that is too narrow the bar lies below. */
function drawTerms(frame: Frame, costs: readonly TermCost[], top: number) {
  const { theme, left, right } = frame;
  const size = Math.max(10, theme.textSize * 0.85);
  const most = Math.max(...costs.map(({ cost }) => cost), 0.001);
  const words = Math.max(0, ...costs.map(({ term }) => textWidth(TERM_WORDS[term], size)));
  const points = textWidth('0000.0', size) + size;
  const beside = right - left - words - size - points;
  const isBelow = beside < (right - left) * LEAST_BAR;
  const room = isBelow ? right - left : beside;
  const step = size * (isBelow ? 2.6 : 1.6);
  const { tint, strong } = theme.chords.other;
  const nodes = costs.flatMap(({ term, cost }, at): readonly SvgNode[] => {
    const y = top + at * step + size * 1.6;
    const width = (cost / most) * room;
    const x = isBelow ? left : left + words + size;
    const bar = { x, y: isBelow ? y + size * 0.35 : y - size * 0.85, width, height: size * 0.9 };
    const figure = isBelow ? ({ x: right, anchor: 'end' } as const) : { x: x + width + size * 0.4 };
    return [
      say(TERM_WORDS[term], { x: left, y, size, fill: theme.ink }),
      box(bar, { fill: tint, stroke: strong }),
      say(`${round(cost)}`, { ...figure, y, size, fill: theme.ink }),
    ];
  });
  return { nodes, bottom: top + costs.length * step + size * 0.5 };
}

/** A longest bar shorter than this share of the picture says too little. */
const LEAST_BAR = 0.3;
