import { type Line, parseMetre, requireLine } from '@reedplate/line';
import { type OptionNames, requireOptions } from '@reedplate/pitch';
import {
  DEFAULT_LINE_TEMPO,
  type EffortModel,
  type ExplainedStep,
  effortModelById,
  type PathExplanation,
} from '@reedplate/playability';
import { barOneOf } from '../line/line-notes.js';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { path, say } from '../svg/draw.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend, lineSign } from '../svg/legend.js';
import type { SvgNode } from '../svg/node.js';
import { textWidth } from '../text/text-width.js';
import { type AirStretch, airTrack } from './air-track.js';
import { requireExplanation } from './require-explanation.js';

/** What {@link breathPicture} goes by. */
export interface BreathPictureOptions extends PictureOptions {
  /** The effort model of the path, for the limits; default that of the catalogue by its id. */
  readonly model?: EffortModel;
  /** Felt beats a minute; default that of the line, or 100 where it has none. */
  readonly tempo?: number;
}

const BREATH_PICTURE_OPTIONS: OptionNames<BreathPictureOptions> = {
  ...PICTURE_OPTIONS,
  model: true,
  tempo: true,
};

/**
 * The air in the lungs over time: up while drawing, down while blowing, with the limits of what is
 * comfortable and of what is possible.
 *
 * @param explanation as `explainPath` gives it for the line
 * @throws ReedplateError `MODEL_UNKNOWN` for a model of the caller's own that is not given,
 *   `NUMBER_RANGE` for the width
 * @example
 * ```ts
 * import { makeHarp } from '@reedplate/layout';
 * import { makeLine } from '@reedplate/line';
 * import { breathPicture } from '@reedplate/picture';
 * import { explainPath } from '@reedplate/playability';
 *
 * const line = makeLine([{ start: 0, duration: 3840, pitch: 74 }], { tempo: 60 });
 * const explained = explainPath(line, makeHarp('C'));
 * if (!explained.playable) throw new Error('not playable');
 * breathPicture(explained, line).text.split('\n')[1]; // => 'bar 1 beat 1: draw to 4 s above half full'
 * ```
 */
export function breathPicture(
  explanation: PathExplanation,
  line: Line,
  options: BreathPictureOptions = {},
): Picture {
  requireOptions(options, BREATH_PICTURE_OPTIONS, 'breathPicture');
  requireExplanation(explanation);
  requireLine(line);
  const model = options.model ?? effortModelById(explanation.path.model);
  const { comfort, capacity } = model.weights;
  const tempo = options.tempo ?? line.tempo ?? DEFAULT_LINE_TEMPO;
  const secondsPerTick = 60 / (tempo * parseMetre(line.metre).beatTicks);
  const stretches = airTrack(explanation.steps, model.weights.chordAir, secondsPerTick);
  const frame = makeFrame(options, 'Air over the line');
  const plot = plotOf(frame, line, stretches, capacity);
  const legend = drawLegend(frame, legendItems(frame), plot.bottom + plot.small * 1.8);
  return finishPicture(frame, {
    description: describeAir(explanation.steps, { comfort, capacity }),
    text: [frame.title, ...explanation.steps.map(stepInText)].join('\n'),
    nodes: [
      ...drawLimits(frame, plot, { comfort, capacity }),
      ...drawBars(frame, plot),
      ...stretches.map((stretch) => drawStretch(stretch, frame, plot)),
      ...legend.nodes,
    ],
    bottom: legend.bottom,
  });
}

interface Limits {
  readonly comfort: number;
  readonly capacity: number;
}

interface Plot {
  readonly small: number;
  readonly left: number;
  readonly top: number;
  readonly bottom: number;
  readonly xOf: (tick: number) => number;
  readonly yOf: (seconds: number) => number;
  readonly from: number;
  readonly to: number;
  readonly barTicks: number;
  readonly barOne: number;
}

const WORDS = Object.freeze({ full: 'full', half: 'half full', empty: 'empty' });

function plotOf(
  frame: Frame,
  line: Line,
  stretches: readonly AirStretch[],
  capacity: number,
): Plot {
  const { theme, right, top } = frame;
  const small = Math.max(10, theme.textSize * 0.75);
  const left = frame.left + textWidth(WORDS.half, small) + small * 0.6;
  const from = stretches[0]?.start ?? 0;
  const to = stretches.at(-1)?.end ?? 1;
  const height = Math.max(theme.textSize * 8, frame.width * 0.28);
  return {
    small,
    left,
    top: top + small * 0.6,
    bottom: top + small * 0.6 + height,
    from,
    to,
    xOf: (tick) => left + ((tick - from) / (to - from)) * (right - left),
    yOf: (seconds) => top + small * 0.6 + height * (0.5 - seconds / (2 * capacity)),
    barTicks: parseMetre(line.metre).barTicks,
    barOne: barOneOf(line),
  };
}

function drawLimits(frame: Frame, plot: Plot, { comfort, capacity }: Limits): readonly SvgNode[] {
  const { theme, left, right } = frame;
  const { small, yOf } = plot;
  const across = (seconds: number) =>
    [
      [plot.left, yOf(seconds)],
      [right, yOf(seconds)],
    ] as const;
  const word = (text: string, seconds: number) =>
    say(text, { x: left, y: yOf(seconds) + small * 0.35, size: small, fill: theme.faint });
  return [
    ...[capacity, -capacity].map((at) => path(across(at), { stroke: theme.ink, strokeWidth: 2 })),
    ...[comfort, -comfort].map((at) =>
      path(across(at), { stroke: theme.chords.five.strong, strokeWidth: 1.5, dash: '6 4' }),
    ),
    path(across(0), { stroke: theme.rule, strokeWidth: 1 }),
    word(WORDS.full, capacity),
    word(WORDS.half, 0),
    word(WORDS.empty, -capacity),
  ];
}

/** Bar numbers below, as many as there is room for. */
function drawBars({ theme }: Frame, plot: Plot): readonly SvgNode[] {
  const { small, xOf, from, to, barTicks, barOne } = plot;
  const first = Math.ceil((from - barOne) / barTicks);
  const last = Math.floor((to - 1 - barOne) / barTicks);
  const room = textWidth('bar 000', small) / Math.max(1, xOf(barTicks) - xOf(0));
  const every = Math.max(1, Math.ceil(room));
  const bars: SvgNode[] = [];
  for (let bar = first; bar <= last; bar += every) {
    const x = xOf(barOne + bar * barTicks);
    const line = [[x, plot.top] as const, [x, plot.bottom] as const];
    bars.push(path(line, { stroke: theme.rule, strokeWidth: 0.75, dash: '2 3' }));
    const look = { x, y: plot.bottom + small * 1.3, size: small, fill: theme.faint };
    const text = `bar ${bar + 1}`;
    if (x + textWidth(text, small) <= plot.xOf(to)) bars.push(say(text, look));
  }
  return bars;
}

/** Drawing is a thick line, blowing a thin one, a rest a dotted one. */
function drawStretch(stretch: AirStretch, { theme }: Frame, { xOf, yOf }: Plot): SvgNode {
  const ends = [
    [xOf(stretch.start), yOf(stretch.before)],
    [xOf(stretch.end), yOf(stretch.after)],
  ] as const;
  const { strong } = theme.chords.one;
  if (stretch.breath === 'draw') return path(ends, { stroke: strong, strokeWidth: 4 });
  if (stretch.breath === 'blow') return path(ends, { stroke: strong, strokeWidth: 1.75 });
  return path(ends, { stroke: theme.faint, strokeWidth: 1.75, dash: '2 3' });
}

function legendItems({ theme }: Frame) {
  const { strong } = theme.chords.one;
  const limit = theme.chords.five.strong;
  return [
    { label: 'draw', sign: lineSign({ stroke: strong, strokeWidth: 4 }) },
    { label: 'blow', sign: lineSign({ stroke: strong, strokeWidth: 1.75 }) },
    { label: 'rest', sign: lineSign({ stroke: theme.faint, strokeWidth: 1.75, dash: '2 3' }) },
    { label: 'comfort', sign: lineSign({ stroke: limit, strokeWidth: 1.5, dash: '4 2' }) },
  ];
}

function describeAir(steps: readonly ExplainedStep[], { comfort, capacity }: Limits): string {
  const strained = steps.filter(({ air }) => Math.abs(air) > comfort).length;
  const most = Math.max(...steps.map(({ air }) => Math.abs(air)));
  return (
    `Air in seconds of playing from half full; comfortable to ${comfort}, possible to ${capacity}. ` +
    `The most is ${round(most)}; ${strained} of ${steps.length} events end beyond comfort.`
  );
}

function stepInText({ bar, beat, soundings, air }: ExplainedStep): string {
  const side = air >= 0 ? 'above' : 'below';
  const place = `bar ${bar} beat ${round(beat)}`;
  return `${place}: ${soundings[0].breath} to ${round(Math.abs(air))} s ${side} half full`;
}

const round = (value: number): number => Math.round(value * 100) / 100;
