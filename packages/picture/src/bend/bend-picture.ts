import type { NoteInSeconds } from '@reedplate/line';
import { requireOptions } from '@reedplate/pitch';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { box, path, say } from '../svg/draw.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend, lineSign } from '../svg/legend.js';
import type { SvgNode } from '../svg/node.js';
import { textWidth } from '../text/text-width.js';
import { type BendPlot, plotOf, rowName } from './bend-plot.js';
import { requireNotesInSeconds } from './require-notes.js';

/**
 * Pitch over time: each note as a bar on its semitone, and over it the pitch that sounded from moment to moment,
 * so that one sees a bend come down to its target, stop short of it or fall past it.
 *
 * A recording of many notes is better shown a few seconds at a time: pass the notes of these.
 *
 * @param notes as `hearNotes` gives them
 * @throws ReedplateError `LINE_INVALID` for what are no notes, `LIST_EMPTY` for none, `OPTION_UNKNOWN`,
 *   `NUMBER_RANGE` for the width
 * @example
 * ```ts
 * import { bendPicture } from '@reedplate/picture';
 *
 * const curve = [
 *   { at: 0, cents: 150 },
 *   { at: 0.3, cents: -20 },
 * ];
 * const { text } = bendPicture([{ start: 0, duration: 1, pitch: 70, cents: -20, curve }]);
 * text.split('\n')[1]; // => '0 s: B♭4 for 1 s, held 20 cents flat; 150 cents sharp at first'
 * bendPicture([]); // throws LIST_EMPTY
 * ```
 */
export function bendPicture(
  notes: readonly NoteInSeconds[],
  options: PictureOptions = {},
): Picture {
  requireOptions(options, PICTURE_OPTIONS, 'bendPicture');
  requireNotesInSeconds(notes);
  const frame = makeFrame(options, 'Pitch over time');
  const plot = plotOf(frame, notes);
  const legend = drawLegend(frame, legendItems(frame), plot.bottom + plot.small * 2.4);
  return finishPicture(frame, {
    description: describeNotes(notes),
    text: [frame.title, ...notes.map(noteInText)].join('\n'),
    nodes: [
      ...drawRows(frame, plot),
      ...drawSeconds(frame, plot),
      ...notes.map((note) => drawTarget(note, frame, plot)),
      ...notes.map((note) => drawPitch(note, frame, plot)),
      ...legend.nodes,
    ],
    bottom: legend.bottom,
  });
}

/** A line and a name for each semitone. */
function drawRows({ theme, left }: Frame, plot: BendPlot): readonly SvgNode[] {
  const { small, rows, yOf } = plot;
  return rows.flatMap((pitch) => {
    const across = [
      [plot.left, yOf(pitch)],
      [plot.right, yOf(pitch)],
    ] as const;
    const look = { x: left, y: yOf(pitch) + small * 0.35, size: small, fill: theme.faint };
    return [path(across, { stroke: theme.rule, strokeWidth: 0.75 }), say(rowName(pitch), look)];
  });
}

/** Steps that seconds are counted in, so that their names have room. */
const STEPS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1800, 3600] as const;

function drawSeconds({ theme }: Frame, plot: BendPlot): readonly SvgNode[] {
  const { small, from, to, xOf, bottom } = plot;
  const room = textWidth('0000.0 s', small) * 1.5;
  const step = STEPS.find((each) => xOf(from + each) - xOf(from) >= room) ?? to - from;
  const marks: SvgNode[] = [];
  for (let count = Math.ceil(from / step); count * step <= to; count += 1) {
    const second = round(count * step);
    const x = xOf(second);
    const up = [[x, plot.top] as const, [x, bottom] as const];
    marks.push(path(up, { stroke: theme.rule, strokeWidth: 0.75, dash: '2 3' }));
    const text = `${second} s`;
    if (x + textWidth(text, small) > plot.right) continue;
    marks.push(say(text, { x, y: bottom + small * 1.3, size: small, fill: theme.faint }));
  }
  return marks;
}

/** Half a semitone high: what lies within it is nearer to this note than to any other. */
function drawTarget(note: NoteInSeconds, { theme }: Frame, plot: BendPlot): SvgNode {
  const { xOf, yOf, row } = plot;
  const [x, end] = [xOf(note.start), xOf(note.start + note.duration)];
  const place = { x, y: yOf(note.pitch) - row / 2, width: end - x, height: row };
  const { tint, strong } = theme.chords.one;
  return box(place, { fill: tint, stroke: strong, strokeWidth: 1 });
}

/** The pitch from moment to moment; level where the note has no curve, and after its last point. */
function drawPitch(note: NoteInSeconds, { theme }: Frame, { xOf, yOf }: BendPlot): SvgNode {
  const { start, duration, pitch, cents = 0, curve = [] } = note;
  const points = curve.length === 0 ? [{ at: 0, cents }] : curve;
  const end = { at: duration, cents: points.at(-1)?.cents ?? cents };
  const places = [...points, end].map(
    (point) => [xOf(start + point.at), yOf(pitch + point.cents / 100)] as const,
  );
  return path(places, { stroke: theme.ink, strokeWidth: 2 });
}

function legendItems({ theme }: Frame) {
  const { tint, strong } = theme.chords.one;
  return [
    {
      label: 'note',
      sign: (x: number, y: number, r: number) =>
        box(
          { x: x - r, y: y - r / 2, width: 2 * r, height: r },
          { fill: tint, stroke: strong, strokeWidth: 1 },
        ),
    },
    { label: 'what sounds', sign: lineSign({ stroke: theme.ink, strokeWidth: 2 }) },
  ];
}

function describeNotes(notes: readonly NoteInSeconds[]): string {
  const moving = notes.filter(({ curve = [] }) => curve.length > 0).length;
  const off = notes.reduce((most, { cents = 0 }) => Math.max(most, Math.abs(cents)), 0);
  const count = notes.length === 1 ? '1 note' : `${notes.length} notes`;
  return `${count}, ${moving} of them with a pitch that moves; held at most ${round(off)} cents from their semitone.`;
}

function noteInText({ start, duration, pitch, cents = 0, curve = [] }: NoteInSeconds): string {
  const held = cents === 0 ? '' : `, held ${centsInWords(cents)}`;
  const [first] = curve;
  const began = first === undefined ? '' : `; ${centsInWords(first.cents)} at first`;
  return `${round(start)} s: ${rowName(pitch)} for ${round(duration)} s${held}${began}`;
}

function centsInWords(cents: number): string {
  if (Math.round(cents) === 0) return 'in tune';
  return `${Math.abs(Math.round(cents))} cents ${cents > 0 ? 'sharp' : 'flat'}`;
}

const round = (value: number): number => Math.round(value * 100) / 100;
