import { ROLE_SHAPES } from '../chart/draw-chart.js';
import { lanesOf } from '../line/lay-labels.js';
import { box, path, say } from '../svg/draw.js';
import type { Frame } from '../svg/frame.js';
import type { SvgNode } from '../svg/node.js';
import { shape } from '../svg/shapes.js';
import type { ChordRole } from '../theme/theme.js';
import { markOfClass, noteMark } from './class-marks.js';
import { landingMark, landingOf } from './landing-marks.js';
import { INSET, type LaidBar, type ScoreLayout } from './score-layout.js';

/** How the bars of a take are drawn. */
export interface TakeLook {
  readonly frame: Frame;
  readonly layout: ScoreLayout;
  /** What a chord is in the key, by its symbol. */
  readonly roleOfChord: (symbol: string | null) => ChordRole;
  /** Lowest and highest pitch of the take. */
  readonly range: readonly [number, number];
}

/** The heights within a row of bars. */
interface RowHeights {
  readonly names: number;
  readonly landings: number;
  readonly notes: number;
  readonly degrees: number;
  readonly foot: number;
}

/** Draws a row of bars, and says where it ends. */
export function drawRow(row: readonly LaidBar[], look: TakeLook, top: number) {
  const { size, small } = look.layout;
  const lanes = (labels: keyof Pick<LaidBar, 'names' | 'degrees'>): number =>
    Math.max(1, ...row.map((laid) => lanesOf(laid[labels])));
  const heights = {
    names: lanes('names') * size * 1.4,
    landings: small * 1.3,
    notes: size * 4,
    degrees: lanes('degrees') * small * 1.35,
    foot: small * 1.7,
  };
  const nodes = row.flatMap((laid, column) => {
    const x = look.frame.left + column * look.layout.width;
    return drawTakeBar(laid, { x, y: top }, heights, look);
  });
  return { nodes, bottom: top + sum(heights) };
}

const sum = ({ names, landings, notes, degrees, foot }: RowHeights): number =>
  names + landings + notes + degrees + foot;

interface Corner {
  readonly x: number;
  readonly y: number;
}

function drawTakeBar(
  laid: LaidBar,
  { x, y }: Corner,
  heights: RowHeights,
  look: TakeLook,
): readonly SvgNode[] {
  const { theme } = look.frame;
  const { width } = look.layout;
  const landingsAt = y + heights.names;
  const notesAt = landingsAt + heights.landings;
  const degreesAt = notesAt + heights.notes;
  const footAt = degreesAt + heights.degrees;
  return [
    ...drawGround(laid, { x, y: notesAt, width, height: heights.notes }, look),
    ...drawNames(laid, { x, y: landingsAt }, look),
    ...drawLandings(laid, { x, y: landingsAt + heights.landings / 2 }, look),
    ...drawNotes(laid, { x, y: notesAt, width, height: heights.notes }, look),
    ...drawDegrees(laid, { x, y: degreesAt }, look),
    ...drawFoot(laid, { x, y: footAt }, look),
    box({ x, y, width, height: sum(heights) }, { stroke: theme.ink, strokeWidth: 1.25 }),
  ];
}

interface Area extends Corner {
  readonly width: number;
  readonly height: number;
}

/** The tint of each chord under its notes. */
function drawGround({ bar, names }: LaidBar, area: Area, look: TakeLook): readonly SvgNode[] {
  return bar.chords.map((symbol, at) => {
    const from = at === 0 ? 0 : (names[at]?.x ?? 0);
    const to = names[at + 1]?.x ?? area.width;
    const { tint } = look.frame.theme.chords[look.roleOfChord(symbol)];
    return box({ ...area, x: area.x + from, width: Math.max(0, to - from) }, { fill: tint });
  });
}

function drawNames({ bar, names }: LaidBar, { x, y }: Corner, look: TakeLook): readonly SvgNode[] {
  const { theme } = look.frame;
  const { size } = look.layout;
  return names.flatMap((name, at) => {
    const role = look.roleOfChord(bar.chords[at] ?? null);
    const { strong } = theme.chords[role];
    const base = y - name.lane * size * 1.4 - size * 0.3;
    const radius = size * 0.36;
    const mark = { fill: role === 'other' ? 'none' : strong, stroke: strong, strokeWidth: 1.5 };
    return [
      shape(ROLE_SHAPES[role], x + name.x + radius, base - size * 0.36, radius, mark),
      say(name.text, { x: x + name.x + size, y: base, size, fill: theme.ink, weight: 'bold' }),
    ];
  });
}

function drawLandings({ bar }: LaidBar, { x, y }: Corner, look: TakeLook): readonly SvgNode[] {
  const { width, small } = look.layout;
  const radius = small * 0.45;
  return bar.changes.flatMap(({ change, share }) => {
    const at = x + Math.max(INSET + radius, share * width);
    return landingMark(landingOf(change), { x: at, y, radius }, look.frame.theme);
  });
}

/** Notes by pitch and time: a line as long as each is held, and its mark where it is struck. */
function drawNotes({ bar }: LaidBar, area: Area, look: TakeLook): readonly SvgNode[] {
  const { theme } = look.frame;
  const radius = look.layout.size * 0.3;
  const [lowest, highest] = look.range;
  const room = area.height - 4 * radius;
  return bar.notes.flatMap(({ note, from, to, isStruck }) => {
    const high = (note.pitch - lowest) / Math.max(1, highest - lowest);
    const y = area.y + 2 * radius + room * (1 - high);
    const begin = area.x + Math.max(from * area.width, isStruck ? INSET + radius : 0);
    const end = Math.max(begin, area.x + to * area.width - 2);
    const shade = theme.chords[look.roleOfChord(note.chord)];
    const line = [[begin, y] as const, [end, y] as const];
    const stroke = note.chord === null ? theme.faint : shade.strong;
    const held = path(line, { stroke, strokeWidth: 2 });
    if (!isStruck) return [held];
    return [held, noteMark(markOfClass(note.class), { x: begin, y, radius }, { theme, shade })];
  });
}

function drawDegrees({ degrees }: LaidBar, { x, y }: Corner, look: TakeLook): readonly SvgNode[] {
  const { theme } = look.frame;
  const { small } = look.layout;
  return degrees.map((label) =>
    say(label.text, {
      x: x + label.x,
      y: y + small * (1 + label.lane * 1.35),
      size: small,
      fill: theme.ink,
    }),
  );
}

/** The number of the bar, and a strip that is as full as the bar is good. */
function drawFoot({ bar }: LaidBar, { x, y }: Corner, look: TakeLook): readonly SvgNode[] {
  const { theme } = look.frame;
  const { width, small } = look.layout;
  const base = y + small * 1.2;
  const word = bar.number === 0 ? 'pickup' : `bar ${bar.number}`;
  const number = say(word, { x: x + INSET, y: base, size: small, fill: theme.faint });
  if (bar.number === 0) return [number];
  const said = bar.chordFit === null ? 'rest' : `${Math.round(bar.chordFit * 100)} %`;
  const right = x + width - INSET;
  const share = say(said, { x: right, y: base, size: small, fill: theme.ink, anchor: 'end' });
  if (bar.chordFit === null) return [number, share];
  const from = x + INSET + small * 4;
  const room = right - small * 3.6 - from;
  if (room < small) return [number, share];
  const strip = { x: from, y: base - small * 0.75, width: room, height: small * 0.8 };
  const { strong } = theme.chords.other;
  return [
    number,
    box({ ...strip, width: room * bar.chordFit }, { fill: strong }),
    box(strip, { stroke: strong, strokeWidth: 1 }),
    share,
  ];
}
