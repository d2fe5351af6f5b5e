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

/** The terms of an effort in words. */
const TERM_WORDS: Readonly<Record<EffortTerm, string>> = Object.freeze({
  technique: 'bending',
  chord: 'chords',
  hold: 'holding bends',
  reach: 'reach',
  breath: 'turns of breath',
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
  const { path, steps, terms } = explanation;
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
  const height = theme.textSize * 5;
  const rowHeight = small * 1.4 + height + size * 1.9;
  const nodes = steps.flatMap((step, at): readonly SvgNode[] => {
    const x = left + (at % inRow) * slot;
    const y = top + Math.floor(at / inRow) * rowHeight + small * 1.4;
    const high = (step.effort / most) * height;
    const middle = x + slot / 2;
    const word = { x: middle, fill: theme.ink, anchor: 'middle' as const };
    const { tint, strong } = theme.chords.other;
    const place = { x: x + 2, y: y + height - high, width: slot - 4, height: high };
    return [
      box(place, { fill: tint, stroke: strong, strokeWidth: 1.5 }),
      say(`${round(step.effort)}`, { ...word, y: y + height - high - 3, size: small }),
      say(labelOf(step), { ...word, y: y + height + size * 1.15, size, weight: 'bold' }),
    ];
  });
  return { nodes, bottom: top + Math.ceil(steps.length / inRow) * rowHeight };
}

interface TermCost {
  readonly term: EffortTerm;
  readonly cost: number;
}

function drawTerms({ theme, left, right }: Frame, costs: readonly TermCost[], top: number) {
  const size = Math.max(10, theme.textSize * 0.85);
  const most = Math.max(...costs.map(({ cost }) => cost), 0.001);
  const from =
    left + Math.max(0, ...costs.map(({ term }) => textWidth(TERM_WORDS[term], size))) + size;
  const room = right - from - textWidth('0000.0', size) - size;
  const nodes = costs.flatMap(({ term, cost }, at): readonly SvgNode[] => {
    const y = top + (at + 1) * size * 1.6;
    const width = (cost / most) * room;
    const { tint, strong } = theme.chords.other;
    return [
      say(TERM_WORDS[term], { x: left, y, size, fill: theme.ink }),
      box({ x: from, y: y - size * 0.85, width, height: size }, { fill: tint, stroke: strong }),
      say(`${round(cost)}`, { x: from + width + size * 0.4, y, size, fill: theme.ink }),
    ];
  });
  return { nodes, bottom: top + costs.length * size * 1.6 + size * 0.3 };
}
