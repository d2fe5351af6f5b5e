import type { Chart } from '@reedplate/form';
import {
  type HarpLike,
  harpName,
  type KnownTunings,
  type PlayerLike,
  toHarp,
} from '@reedplate/layout';
import { barBeatAt, type Line, parseMetre } from '@reedplate/line';
import { type OptionNames, ReedplateError, requireOptions } from '@reedplate/pitch';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { type BarRange, requireBars } from '../require-bars.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend } from '../svg/legend.js';
import type { SvgNode } from '../svg/node.js';
import { shape } from '../svg/shapes.js';
import { drawSystem } from './draw-system.js';
import { laySystems } from './lay-systems.js';
import {
  barOneOf,
  chordsOf,
  type LineChord,
  type LineNote,
  type LineSoundings,
  notesOf,
} from './line-notes.js';

/** What {@link linePicture} shows besides the line. */
export interface LinePictureOptions extends PictureOptions {
  /** The chart it is played over: its chords stand above; default none. */
  readonly chart?: Chart;
  /** What sounds each event, as a path or a practice line has it; default the easiest path. */
  readonly soundings?: LineSoundings;
  /** First and last bar to draw, from 0 for a pickup; default all. */
  readonly bars?: BarRange;
  /** What the player can do, where the path is looked for; default `bends`. */
  readonly level?: PlayerLike;
  /** Tunings of one's own, for a harp that is named in one. */
  readonly known?: KnownTunings;
}

const LINE_PICTURE_OPTIONS: OptionNames<LinePictureOptions> = {
  ...PICTURE_OPTIONS,
  chart: true,
  soundings: true,
  bars: true,
  level: true,
  known: true,
};

/**
 * A line as tab over a beat grid, in systems as wide as the page: what is held is as long as it is
 * held, blow notes lie high and draw notes low. What the harp cannot sound stands as `?`.
 *
 * @throws ReedplateError `LINE_EMPTY`, `HARP_INVALID`, `OPTION_UNKNOWN` for soundings that are not one a
 *   event, `NUMBER_RANGE` for bars without notes
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { linePicture } from '@reedplate/picture';
 *
 * const line = makeLine([
 *   { start: 0, duration: 960, pitch: 67 },
 *   { start: 960, duration: 2880, pitch: 72 },
 * ]);
 * linePicture(line, 'C').text.split('\n')[1]; // => 'bar 1: +3 on beat 1 for 1, +4 on beat 2 for 3'
 * linePicture(makeLine([]), 'C'); // throws LINE_EMPTY
 * ```
 */
export function linePicture(line: Line, harp: HarpLike, options: LinePictureOptions = {}): Picture {
  requireOptions(options, LINE_PICTURE_OPTIONS, 'linePicture');
  const subject = toHarp(harp, options.known);
  const all = notesOf(line, subject, options.soundings, options.level ?? 'bends');
  const notes = within(all, line, options.bars);
  const chords = chordsOf(options.chart);
  const usualTitle = `${line.title?.slice(0, 150) ?? 'Line'} on a ${harpName(subject)} harp`;
  const frame = makeFrame(options, usualTitle);
  const layout = laySystems(frame, { metre: line.metre, notes, chords });
  const nodes: SvgNode[] = [];
  let top = frame.top;
  for (const system of layout.systems) {
    const drawn = drawSystem(system, layout, frame, top);
    nodes.push(...drawn.nodes);
    top = drawn.bottom + frame.theme.textSize * 0.5;
  }
  const legend = drawBreaths(frame, top);
  return finishPicture(frame, {
    description: describeLine(notes, layout.systems.at(-1)?.firstBar ?? 1),
    text: lineInText(frame.title, line, notes, chords),
    nodes: [...nodes, ...legend.nodes],
    bottom: legend.bottom,
  });
}

/** The notes that begin in the bars asked for. */
function within(
  notes: readonly LineNote[],
  { metre }: Line,
  bars: LinePictureOptions['bars'],
): readonly LineNote[] {
  if (bars === undefined) return notes;
  const [first, last] = requireBars(bars);
  const { barTicks } = parseMetre(metre);
  const kept = notes.filter(
    ({ start }) => start >= (first - 1) * barTicks && start < last * barTicks,
  );
  if (kept.length > 0) return kept;
  throw new ReedplateError({
    code: 'NUMBER_RANGE',
    value: `${first} to ${last}`,
    expected: 'bars in which the line has notes',
  });
}

function drawBreaths(frame: Frame, top: number) {
  const { strong, tint } = frame.theme.chords.other;
  return drawLegend(
    frame,
    [
      {
        label: 'blow',
        sign: (x, y, r) => shape('up', x, y, r, { fill: tint, stroke: strong, strokeWidth: 1.5 }),
      },
      { label: 'draw', sign: (x, y, r) => shape('down', x, y, r, { fill: strong }) },
    ],
    top,
  );
}

function describeLine(notes: readonly LineNote[], lastSystem: number): string {
  const missing = notes.filter(({ soundings }) => soundings.length === 0).length;
  const lacks = missing === 0 ? '' : ` The harp cannot sound ${missing} of them, marked with ?.`;
  const pages = lastSystem > 1 ? ', in rows of bars' : '';
  return `${notes.length} notes or chords as tab over their beats${pages}.${lacks}`;
}

/** A line a bar: its chords, then each note with its beat and length in beats. */
function lineInText(
  title: string,
  line: Line,
  notes: readonly LineNote[],
  chords: readonly LineChord[],
): string {
  const { beatTicks } = parseMetre(line.metre);
  const barOne = barOneOf(line);
  const rows = new Map<number, string[]>();
  for (const { start, end, label } of notes) {
    const { bar, beat } = barBeatAt(start + barOne, line);
    const held = Math.round(((end - start) / beatTicks) * 100) / 100;
    const said = `${label} on beat ${Math.round(beat * 100) / 100} for ${held}`;
    rows.set(bar, [...(rows.get(bar) ?? []), said]);
  }
  const { barTicks } = parseMetre(line.metre);
  const lines = [...rows].map(([bar, said]) => {
    const at = (bar - 1) * barTicks;
    const names = chords.filter(({ start, end }) => start < at + barTicks && end > at);
    const over = names.length === 0 ? '' : ` (${names.map(({ name }) => name).join(', ')})`;
    return `${bar === 0 ? 'pickup' : `bar ${bar}`}${over}: ${said.join(', ')}`;
  });
  return [title, ...lines].join('\n');
}
