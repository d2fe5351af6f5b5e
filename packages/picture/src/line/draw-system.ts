import { ROLE_SHAPES } from '../chart/draw-chart.js';
import { box, path, say } from '../svg/draw.js';
import type { Frame } from '../svg/frame.js';
import type { SvgNode } from '../svg/node.js';
import { shape } from '../svg/shapes.js';
import { textWidth } from '../text/text-width.js';
import { roleOf } from '../theme/chord-role.js';
import type { Shade } from '../theme/theme.js';
import { lanesOf } from './lay-labels.js';
import { type System, type SystemLayout, xIn } from './lay-systems.js';
import type { LineNote } from './line-notes.js';

/** Draws a system: chords, tab, and a beat grid on which blow notes lie high and draw notes low. */
export function drawSystem(system: System, layout: SystemLayout, frame: Frame, top: number) {
  const { theme } = frame;
  const size = theme.textSize;
  const names = drawNames(system, frame, top);
  const labelsTop = top + (system.names.length > 0 ? lanesOf(system.names) * size * 1.35 : 0);
  const gridTop = labelsTop + lanesOf(system.labels) * size * 1.3 + size * 0.3;
  const height = size * 2.6;
  const nodes = [
    ...names,
    ...drawGrid(system, layout, frame, { top: gridTop, height }),
    ...drawNotes(system, layout, frame, { top: gridTop, height }),
    ...drawLabels(system, layout, frame, gridTop),
  ];
  return { nodes, bottom: gridTop + height + size * 1.4 };
}

function drawNames(system: System, { theme }: Frame, top: number): readonly SvgNode[] {
  const size = theme.textSize;
  const lanes = lanesOf(system.names);
  return system.names.flatMap(({ text, x, lane }, at) => {
    const role = roleOf(system.chords[at]?.numeral ?? null);
    const { strong } = theme.chords[role];
    const y = top + (lanes - lane) * size * 1.35 - size * 0.35;
    const fill = role === 'other' ? 'none' : strong;
    const radius = size * 0.36;
    return [
      shape(ROLE_SHAPES[role], x + radius * 1.15, y - size * 0.36, radius, {
        fill,
        stroke: strong,
        strokeWidth: 1.5,
      }),
      say(text, { x: x + size * 1.1, y, size, fill: theme.ink, weight: 'bold' }),
    ];
  });
}

interface Band {
  readonly top: number;
  readonly height: number;
}

/** Lines of bars and beats with their numbers. */
function drawGrid(
  system: System,
  { beatTicks, beatsPerBar, barTicks, barsPerSystem }: SystemLayout,
  frame: Frame,
  { top, height }: Band,
): readonly SvgNode[] {
  const { theme } = frame;
  const xOf = xIn(frame, system, barsPerSystem);
  const small = Math.max(10, theme.textSize * 0.7);
  const below = top + height;
  const across = [
    [xOf(system.from), top + height / 2] as const,
    [xOf(system.to), top + height / 2] as const,
  ];
  const nodes: SvgNode[] = [path(across, { stroke: theme.rule, strokeWidth: 1 })];
  for (let bar = 0; bar <= system.bars; bar += 1) {
    const x = xOf(system.from + bar * barTicks);
    nodes.push(
      path(
        [
          [x, top],
          [x, below],
        ],
        { stroke: theme.ink, strokeWidth: 1.75 },
      ),
    );
    if (bar === system.bars) break;
    nodes.push(...barNumber(system.firstBar + bar, x, below, frame));
    const beatWidth = xOf(system.from + beatTicks) - xOf(system.from);
    const wordWidth = textWidth(barWord(system.firstBar + bar), small, 'bold');
    for (let beat = 1; beat < beatsPerBar; beat += 1) {
      const at = x + beat * beatWidth;
      nodes.push(
        path(
          [
            [at, top],
            [at, below],
          ],
          { stroke: theme.rule, strokeWidth: 0.75, dash: '2 3' },
        ),
      );
      if (beatWidth < small * 1.5 || at - small * 0.7 < x + wordWidth) continue;
      const look = { x: at, y: below + small * 1.15, size: small, fill: theme.faint };
      nodes.push(say(`${beat + 1}`, { ...look, anchor: 'middle' as const }));
    }
  }
  return nodes;
}

function barNumber(number: number, x: number, below: number, { theme }: Frame): readonly SvgNode[] {
  const small = Math.max(10, theme.textSize * 0.7);
  return [
    say(barWord(number), {
      x,
      y: below + small * 1.15,
      size: small,
      fill: theme.ink,
      weight: 'bold',
    }),
  ];
}

function barWord(number: number): string {
  return number === 0 ? 'pickup' : `bar ${number}`;
}

function drawNotes(
  system: System,
  { barsPerSystem }: SystemLayout,
  frame: Frame,
  band: Band,
): readonly SvgNode[] {
  const xOf = xIn(frame, system, barsPerSystem);
  return system.notes.flatMap((note) => {
    const from = xOf(Math.max(note.start, system.from));
    const to = xOf(Math.min(note.end, system.to));
    const chord = system.chords.find(({ start, end }) => start <= note.start && note.start < end);
    const shade = frame.theme.chords[roleOf(chord?.numeral ?? null)];
    return drawNote(note, { from, to }, { band, shade, frame });
  });
}

interface NoteLook {
  readonly band: Band;
  readonly shade: Shade;
  readonly frame: Frame;
}

/** A blow note lies high and is hollow, with a triangle up; a draw note low and filled, with one down. */
function drawNote(
  { soundings }: LineNote,
  { from, to }: { readonly from: number; readonly to: number },
  { band, shade, frame }: NoteLook,
): readonly SvgNode[] {
  const breath = soundings[0]?.breath;
  const half = band.height / 2;
  const height = half * 0.72;
  const y = band.top + (breath === 'draw' ? half : 0) + half * 0.14;
  const width = Math.max(2, to - from - 2);
  const place = {
    x: from + 1,
    y: breath === undefined ? band.top + half - height / 2 : y,
    width,
    height,
  };
  const isDraw = breath === 'draw';
  const body = box(place, {
    fill: isDraw ? shade.strong : shade.tint,
    stroke: breath === undefined ? frame.theme.rule : shade.strong,
    strokeWidth: 1.5,
    corner: Math.min(4, width / 2),
    ...(breath === undefined ? { dash: '3 3' } : {}),
  });
  const radius = height * 0.28;
  if (breath === undefined || width < radius * 3) return [body];
  const mark = shape(
    isDraw ? 'down' : 'up',
    from + 3 + radius * 1.2,
    place.y + height / 2,
    radius,
    {
      fill: isDraw ? frame.theme.paper : shade.strong,
    },
  );
  return [body, mark];
}

/** Tab above the grid; a line leads down from a label that had to go higher. */
function drawLabels(
  system: System,
  { barsPerSystem }: SystemLayout,
  frame: Frame,
  gridTop: number,
): readonly SvgNode[] {
  const { theme } = frame;
  const size = theme.textSize;
  const xOf = xIn(frame, system, barsPerSystem);
  const starts = system.notes.filter(({ start }) => start >= system.from);
  return system.labels.flatMap(({ text, x, lane }, at) => {
    const y = gridTop - size * 0.3 - lane * size * 1.3;
    const word = say(text, { x, y, size, fill: theme.ink, weight: 'bold' });
    const note = starts[at];
    if (lane === 0 || note === undefined) return [word];
    const foot = xOf(note.start) + 1;
    const leader = [[foot, y + size * 0.2] as const, [foot, gridTop] as const];
    return [path(leader, { stroke: theme.faint, strokeWidth: 0.75 }), word];
  });
}
