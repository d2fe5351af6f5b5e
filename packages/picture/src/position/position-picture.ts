import { type Harp, type HarpLike, harpName, toHarp } from '@reedplate/layout';
import { type Key, type KeyLike, type OptionNames, requireOptions, toKey } from '@reedplate/pitch';
import { harpKeyOf, POSITIONS, type Position, positionOf } from '@reedplate/position';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { disc, sayAt } from '../svg/draw.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend } from '../svg/legend.js';
import type { SvgNode } from '../svg/node.js';
import { shape } from '../svg/shapes.js';
import { textWidth } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';
import type { Theme } from '../theme/theme.js';

/** What {@link positionPicture} shows besides the key. */
export interface PositionPictureOptions extends PictureOptions {
  /** The harps at hand, or their names; default none, and then none is marked. */
  readonly harps?: readonly HarpLike[];
}

const POSITION_PICTURE_OPTIONS: OptionNames<PositionPictureOptions> = {
  ...PICTURE_OPTIONS,
  harps: true,
};

/**
 * The circle of fifths around a song: at the top the harp of its own key, 1st position, and against
 * the clock, a fifth down each, the harps of 2nd, 3rd and so on; the harps at hand are filled.
 *
 * @param songKey a key, or its name
 * @throws ReedplateError `KEY_UNKNOWN`, `HARP_INVALID`
 * @example
 * ```ts
 * import { positionPicture } from '@reedplate/picture';
 *
 * const { text } = positionPicture('G', { harps: ['C'] });
 * text.split('\n')[2]; // => '2nd position (cross harp): C harp, at hand'
 * positionPicture('H' as 'G'); // throws KEY_UNKNOWN
 * ```
 */
export function positionPicture(songKey: KeyLike, options: PositionPictureOptions = {}): Picture {
  requireOptions(options, POSITION_PICTURE_OPTIONS, 'positionPicture');
  const key = toKey(songKey);
  const owned = (options.harps ?? []).map((harp) => toHarp(harp));
  const seats = POSITIONS.map((position) => seatOf(position, key, owned));
  const frame = makeFrame(options, `Harps for a song in ${key.name}`);
  const drawn = drawCircle(seats, key, frame);
  const legend = owned.length === 0 ? [] : [atHand(frame)];
  const below = drawLegend(frame, legend, drawn.bottom);
  return finishPicture(frame, {
    description: `The circle of fifths: a song in ${key.name} is played in 1st position on the harp at the top, in each next position on the next harp against the clock.`,
    text: [frame.title, ...seats.map(seatInText)].join('\n'),
    nodes: [...drawn.nodes, ...below.nodes],
    bottom: below.bottom,
  });
}

interface Seat {
  readonly position: Position;
  /** Key of the harp that plays the song in the position. */
  readonly harpKey: string;
  readonly names: readonly string[];
}

function seatOf(position: Position, key: Key, owned: readonly Harp[]): Seat {
  const names = owned
    .filter((harp) => positionOf(harp, key) === position.number)
    .map((harp) => harpName(harp));
  return { position, harpKey: harpKeyOf(key, position.number).name, names };
}

function seatInText({ position, harpKey, names }: Seat): string {
  const called = position.tradeName === undefined ? '' : ` (${position.tradeName})`;
  const here =
    names.length === 0 ? '' : `, at hand${names.join() === harpKey ? '' : `: ${names.join(', ')}`}`;
  return `${position.ordinal} position${called}: ${harpKey} harp${here}`;
}

function drawCircle(seats: readonly Seat[], key: Key, frame: Frame) {
  const { theme, left, right, top } = frame;
  const { node, size, small } = sizesIn((right - left) / 2, theme.textSize);
  const radius = Math.min((right - left) / 2 - node, node * 6.2);
  const x = (left + right) / 2;
  const y = top + node + radius;
  const nodes: SvgNode[] = [disc(x, y, radius, { stroke: theme.rule, strokeWidth: 1.5 })];
  for (const [at, seat] of seats.entries()) {
    const [across, down] = CLOCK[at] ?? [0, 0];
    nodes.push(
      ...drawSeat(
        seat,
        { x: x - across * radius, y: y + down * radius },
        { theme, node, size, small },
      ),
    );
  }
  nodes.push(
    sayAt('song in', { x, y: y - size * 0.9, size: small, fill: theme.faint }),
    sayAt(withSigns(key.name), {
      x,
      y: y + size * 0.7,
      size: size * 1.6,
      fill: theme.ink,
      weight: 'bold',
    }),
  );
  return { nodes, bottom: y + radius + node + small * 0.5 };
}

/** The harps on the circle, as large as their text needs and no larger than leaves them apart. */
function sizesIn(half: number, textSize: number): Pick<SeatLook, 'node' | 'size' | 'small'> {
  const small = Math.max(10, textSize * 0.75);
  const wanted = Math.max(textSize * 1.15, textWidth('12th', small, 'bold') * 0.72);
  // Neighbours are a twelfth of a circle of half - node apart, which is twice the sine of 15 degrees.
  const most = (half * SINE_15 - GAP) / (1 + SINE_15);
  const node = Math.min(wanted, most);
  const share = node / wanted;
  return { node, size: Math.max(10, textSize * share), small: Math.max(10, small * share) };
}

const SINE_15 = 0.25881904510252074;
/** Half of what stays free between two harps on the circle. */
const GAP = 2;

const HALF = 0.5;
const ROOT = 0.8660254037844386;
/** Hours of a clock from twelve on: sine, and the negative of the cosine, of each twelfth. */
const CLOCK: readonly (readonly [number, number])[] = Object.freeze([
  [0, -1],
  [HALF, -ROOT],
  [ROOT, -HALF],
  [1, 0],
  [ROOT, HALF],
  [HALF, ROOT],
  [0, 1],
  [-HALF, ROOT],
  [-ROOT, HALF],
  [-1, 0],
  [-ROOT, -HALF],
  [-HALF, -ROOT],
] as const);

interface SeatLook {
  readonly theme: Theme;
  /** Radius of a harp's disc. */
  readonly node: number;
  readonly size: number;
  readonly small: number;
}

function drawSeat(
  { position, harpKey, names }: Seat,
  { x, y }: { readonly x: number; readonly y: number },
  { theme, node, size, small }: SeatLook,
): readonly SvgNode[] {
  const isOwned = names.length > 0;
  const { strong } = theme.chords.one;
  const fill = isOwned ? strong : theme.paper;
  const ink = isOwned ? theme.paper : theme.ink;
  return [
    disc(x, y, node, { fill, stroke: isOwned ? strong : theme.rule, strokeWidth: 1.5 }),
    sayAt(withSigns(harpKey), { x, y: y - size * 0.4, size, fill: ink, weight: 'bold' }),
    sayAt(position.ordinal, { x, y: y + size * 0.55, size: small, fill: ink }),
  ];
}

function atHand({ theme }: Frame) {
  return {
    label: 'at hand',
    sign: (x: number, y: number, r: number) =>
      shape('disc', x, y, r, { fill: theme.chords.one.strong }),
  };
}
