import { box, disc, path, say, sayAt } from '../svg/draw.js';
import type { Frame } from '../svg/frame.js';
import type { SvgNode } from '../svg/node.js';
import { type Shape, shape } from '../svg/shapes.js';
import { roleOf } from '../theme/chord-role.js';
import type { ChordRole, Theme } from '../theme/theme.js';
import {
  type ChartCell,
  type ChartChord,
  type ChartContent,
  type ChartReader,
  type ChartSection,
  type ChartSizes,
  lineWidth,
  type RepeatSign,
  SIDE,
  signsOf,
} from './chart-layout.js';

/** The shape of each chord's step, beside its colour. */
export const ROLE_SHAPES: Readonly<Record<ChordRole, Shape>> = Object.freeze({
  one: 'disc',
  four: 'diamond',
  five: 'up',
  other: 'square',
});

/** How a chart is drawn. */
export interface ChartLook {
  readonly frame: Frame;
  readonly sizes: ChartSizes;
  readonly reader: ChartReader;
  readonly hasHoles: boolean;
}

/** Draws the sections of a chart one below another. */
export function drawChart({ sections }: ChartContent, look: ChartLook) {
  const nodes: SvgNode[] = [];
  let top = look.frame.top;
  for (const section of sections) {
    const named = sections.length > 1;
    if (named) nodes.push(sayName(section, top, look));
    const drawn = drawSection(section, top + (named ? look.sizes.small * 1.6 : 0), look);
    nodes.push(...drawn.nodes);
    top = drawn.bottom + look.sizes.small * 0.8;
  }
  return { nodes, bottom: top };
}

function sayName({ name }: ChartSection, top: number, { frame, sizes }: ChartLook): SvgNode {
  const { left, theme } = frame;
  const look = { x: left, y: top + sizes.small, size: sizes.small, fill: theme.faint };
  return say(name, { ...look, weight: 'bold' });
}

/** Height of a bar: its number and mark, the large text, and one or two small ones. */
function cellHeight({ large, small }: ChartSizes, hasHoles: boolean): number {
  return small * 1.5 + large * 1.15 + small * 1.25 * (hasHoles ? 2 : 1) + small * 0.5;
}

function drawSection(section: ChartSection, top: number, look: ChartLook) {
  const { frame, sizes } = look;
  const height = cellHeight(sizes, look.hasHoles);
  const { columns, cellWidth: width } = sizes;
  const nodes: SvgNode[] = [];
  let y = top;
  for (let first = 0; first < section.cells.length; first += columns) {
    const row = section.cells.slice(first, first + columns);
    for (const [column, cell] of row.entries()) {
      const place = { x: frame.left + column * width, y, width, height };
      nodes.push(...drawBar(cell, place, signsOf(section, first + column), look));
      nodes.push(...repeatSigns(section, first + column, place, look));
      if (section.sounding === first + column) nodes.push(...markSounding(place, look));
    }
    y += height + sizes.small * (hasMarksBelow(section, first + row.length - 1) ? 1.8 : 0.5);
  }
  return { nodes, bottom: y };
}

/** Whether a row that ends with a bar has something written under it. */
function hasMarksBelow({ cells, times, turnaround }: ChartSection, lastOfRow: number): boolean {
  const endsHere = lastOfRow === cells.length - 1;
  return (turnaround !== undefined && lastOfRow >= turnaround) || (endsHere && times > 1);
}

interface Place {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function drawBar(
  cell: ChartCell,
  place: Place,
  signs: readonly RepeatSign[],
  look: ChartLook,
): readonly SvgNode[] {
  const { theme } = look.frame;
  const { small } = look.sizes;
  // Mark and number stand clear of the thick line of a repeat.
  const clear = (sign: RepeatSign): number =>
    Math.max(SIDE, small * 0.3) + (signs.includes(sign) ? 3 * lineWidth(small) : 0);
  const chords = cell.chords.flatMap((chord, at) => {
    const from = place.x + chord.share * place.width;
    const to = place.x + (cell.chords[at + 1]?.share ?? 1) * place.width;
    const part = { ...place, x: from, width: to - from };
    if (cell.isSame) return drawSame(chord, part, theme);
    return drawChord(chord, part, at === 0 ? clear('begin') : SIDE, look);
  });
  const number = say(`${cell.number}`, {
    x: place.x + place.width - clear('end'),
    y: place.y + small * 1.2,
    size: Math.max(10, small * 0.8),
    fill: theme.faint,
    anchor: 'end',
  });
  const edge = box(place, { stroke: theme.ink, strokeWidth: lineWidth(small) });
  return [...chords, edge, number];
}

/** The bar that sounds: a thick frame, and a pointer, so that it is no matter of colour. */
function markSounding(place: Place, { frame, sizes }: ChartLook): readonly SvgNode[] {
  const { ink, paper } = frame.theme;
  const thick = Math.max(4, sizes.small * 0.25);
  const look = { fill: ink, stroke: paper, strokeWidth: 1.5 };
  return [
    box(place, { stroke: ink, strokeWidth: thick }),
    shape('down', place.x + place.width / 2, place.y, thick * 2, look),
  ];
}

/** A bar like the one before it: the sign that bands read, a stroke between two dots. */
function drawSame({ numeral }: ChartChord, place: Place, theme: Theme): readonly SvgNode[] {
  const { tint } = theme.chords[roleOf(numeral)];
  const x = place.x + place.width / 2;
  const y = place.y + place.height / 2;
  const r = Math.min(place.width, place.height) * 0.16;
  const ends = [[x - r, y + r] as const, [x + r, y - r] as const];
  return [
    box(place, { fill: tint }),
    path(ends, { stroke: theme.ink, strokeWidth: r * 0.35 }),
    disc(x - r, y - r * 0.45, r * 0.25, { fill: theme.ink }),
    disc(x + r, y + r * 0.45, r * 0.25, { fill: theme.ink }),
  ];
}

function drawChord(
  chord: ChartChord,
  place: Place,
  side: number,
  look: ChartLook,
): readonly SvgNode[] {
  const { theme } = look.frame;
  const { large, small } = look.sizes;
  const role = roleOf(chord.numeral);
  const { tint, strong } = theme.chords[role];
  const isStudent = look.reader === 'student';
  const main = isStudent ? chord.numeralText || chord.nameText : chord.nameText;
  const second = isStudent ? chord.numeralText && chord.nameText : chord.numeralText;
  const middle = place.x + place.width / 2;
  const mainY = place.y + small * 1.5 + large * 0.6;
  const lines = [second, chord.holesText].filter((text) => text !== '');
  const mark = small * 0.42;
  return [
    box(place, { fill: tint }),
    ...(chord.numeral === null
      ? []
      : [
          shape(ROLE_SHAPES[role], place.x + side + mark, place.y + SIDE + mark, mark, {
            fill: role === 'other' ? 'none' : strong,
            stroke: strong,
            strokeWidth: 1.5,
          }),
        ]),
    sayAt(main, { x: middle, y: mainY, size: large, fill: theme.ink, weight: 'bold' }),
    ...lines.map((text, at) =>
      sayAt(text, {
        x: middle,
        y: mainY + large * 0.6 + small * (0.7 + at * 1.25),
        size: small,
        fill: theme.ink,
      }),
    ),
  ];
}

/** Repeat signs at the ends of a section, how often it is played, and its turnaround. */
function repeatSigns(section: ChartSection, at: number, place: Place, look: ChartLook) {
  const { theme } = look.frame;
  const { small } = look.sizes;
  const nodes: SvgNode[] = [];
  const unit = lineWidth(small);
  const signs = signsOf(section, at);
  const below = place.y + place.height;
  if (signs.includes('begin')) nodes.push(...repeatBar(place.x, unit, place, theme.ink));
  if (signs.includes('end')) {
    nodes.push(...repeatBar(place.x + place.width, -unit, place, theme.ink));
    const end = { x: place.x + place.width, y: below + small * 1.25, size: small };
    nodes.push(
      say(`×${section.times}`, { ...end, fill: theme.ink, anchor: 'end', weight: 'bold' }),
    );
  }
  if (section.turnaround === undefined || at < section.turnaround) return nodes;
  const from = place.x + 3;
  const to = place.x + place.width - 3;
  const y = below + 4 * unit;
  const line = [[from, y] as const, [to, y] as const];
  nodes.push(path(line, { stroke: theme.faint, strokeWidth: 1.5 * unit }));
  if (at === section.turnaround) {
    const start = { x: from, y: below + 5 * unit + small, size: Math.max(10, small * 0.85) };
    nodes.push(say('turnaround', { ...start, fill: theme.faint }));
  }
  return nodes;
}

/** A thick line and two dots; a negative unit looks back. */
function repeatBar(x: number, unit: number, place: Place, ink: string): readonly SvgNode[] {
  const { y, height } = place;
  const width = 3 * Math.abs(unit);
  return [
    box({ x: unit > 0 ? x : x - width, y, width, height }, { fill: ink }),
    ...[0.4, 0.6].map((share) =>
      disc(x + unit * 6, y + height * share, Math.abs(unit) * 1.7, { fill: ink }),
    ),
  ];
}
