import { harpName } from '@reedplate/layout';
import { requireOptions, requireShape, requireShapes } from '@reedplate/pitch';
import type { FitRanking, HarpFit } from '@reedplate/playability';
import { PICTURE_OPTIONS, type Picture, type PictureOptions } from '../picture.js';
import { box, path, say } from '../svg/draw.js';
import { type Frame, finishPicture, makeFrame } from '../svg/frame.js';
import { drawLegend, type LegendItem } from '../svg/legend.js';
import { element, type SvgNode } from '../svg/node.js';
import { textWidth } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';

const RANKING = { what: 'a ranking, as fitHarps gives it', code: 'OPTION_UNKNOWN' } as const;

/**
 * Harps by tuning and key: how much of a line each plays, by how full its cell is, and with what
 * effort a note. The three best are numbered.
 *
 * @param ranking as `fitHarps` gives it; of a harp moved by several intervals the best is shown
 * @throws ReedplateError `NUMBER_RANGE` for the width
 * @example
 * ```ts
 * import { makeLine } from '@reedplate/line';
 * import { fitPicture } from '@reedplate/picture';
 * import { everyHarp, fitHarps } from '@reedplate/playability';
 *
 * const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
 * const { text } = fitPicture(fitHarps(line, everyHarp({ keys: ['C', 'D'] })));
 * text.split('\n')[1]; // => 'C: plays 100 %, 0 points a note'
 * ```
 */
export function fitPicture(ranking: FitRanking, options: PictureOptions = {}): Picture {
  requireOptions(options, PICTURE_OPTIONS, 'fitPicture');
  requireShape(ranking, { harps: 'list', events: 'number' }, RANKING);
  requireShapes(ranking.harps, { harp: 'object', effortPerEvent: 'number' }, RANKING);
  const ranked = bestOfEach(ranking.harps);
  const frame = makeFrame(options, `Harps for ${ranking.events} notes or chords`);
  const groups = groupRows(ranked);
  const nodes: SvgNode[] = [];
  let top = frame.top;
  for (const [name, entries] of groups) {
    const drawn = drawGroup(name, entries, frame, top);
    nodes.push(...drawn.nodes);
    top = drawn.bottom;
  }
  const legend = drawLegend(frame, legendItems(frame), top);
  const best = ranked[0];
  return finishPicture(frame, {
    description: `${ranked.length} harps by tuning and key, each as full as the share of the line it plays.${
      best === undefined ? '' : ` The best is ${harpName(best.fit.harp)}.`
    }`,
    text: [frame.title, ...ranked.map(({ fit }) => fitInText(fit))].join('\n'),
    nodes: [...nodes, ...legend.nodes],
    bottom: legend.bottom,
  });
}

interface Ranked {
  readonly rank: number;
  readonly fit: HarpFit;
}

function bestOfEach(harps: readonly HarpFit[]): readonly Ranked[] {
  const seen = new Set<string>();
  const best: Ranked[] = [];
  for (const fit of harps) {
    const name = harpName(fit.harp);
    if (!seen.has(name)) best.push({ rank: best.length + 1, fit });
    seen.add(name);
  }
  return best;
}

/** Rows of one tuning and register, each in the order of keys from G up. */
function groupRows(ranked: readonly Ranked[]): ReadonlyMap<string, readonly Ranked[]> {
  const groups = new Map<string, Ranked[]>();
  for (const entry of ranked) {
    const { tuning, register } = entry.fit.harp;
    const name = register === 'standard' ? tuning : `${register} ${tuning}`;
    groups.set(name, [...(groups.get(name) ?? []), entry]);
  }
  const lowest = ({ fit }: Ranked): number => fit.harp.holes[0]?.blow ?? 0;
  for (const entries of groups.values()) entries.sort((a, b) => lowest(a) - lowest(b));
  return groups;
}

const percent = (share: number): string => `${Math.round(share * 100)} %`;
const effort = (fit: HarpFit): string => `${Math.round(fit.effortPerEvent * 100) / 100}`;

function fitInText(fit: HarpFit): string {
  const moved = fit.transposition === 0 ? '' : `, moved by ${fit.transposition}`;
  return `${harpName(fit.harp)}: plays ${percent(fit.playableShare)}, ${effort(fit)} points a note${moved}`;
}

function drawGroup(name: string, entries: readonly Ranked[], frame: Frame, top: number) {
  const { theme, left, right } = frame;
  const size = theme.textSize;
  const small = Math.max(10, size * 0.75);
  const keys = entries.map(({ fit, rank }) => textWidth(keyText(fit, rank), size, 'bold'));
  const cell = Math.max(textWidth('100 %', small), ...keys) + size;
  const inRow = Math.max(1, Math.floor((right - left) / cell));
  const width = Math.min((right - left) / inRow, cell * 1.3);
  const height = size * 1.5 + small * 3;
  const nodes: SvgNode[] = [
    say(name.replaceAll('-', ' '), {
      x: left,
      y: top + small,
      size: small,
      fill: theme.faint,
      weight: 'bold',
    }),
  ];
  for (const [at, entry] of entries.entries()) {
    const x = left + (at % inRow) * width;
    const y = top + small * 1.6 + Math.floor(at / inRow) * (height + 4);
    nodes.push(...drawCell(entry, { x, y, width: width - 4, height }, { frame, small }));
  }
  const rows = Math.ceil(entries.length / inRow);
  return { nodes, bottom: top + small * 1.6 + rows * (height + 4) + small };
}

/** What the figures and the filling of a cell mean. */
function legendItems({ theme }: Frame): readonly LegendItem[] {
  const { one, other } = theme.chords;
  const cell = (x: number, y: number, r: number) => ({
    x: x - r,
    y: y - r,
    width: 2 * r,
    height: 2 * r,
  });
  const filled = (x: number, y: number, r: number, share: number) => {
    const height = 2 * r * share;
    return box({ ...cell(x, y, r), y: y + r - height, height }, { fill: other.strong });
  };
  return [
    {
      label: 'share of the line that it plays',
      sign: (x, y, r) =>
        element('g', {}, [
          filled(x, y, r, 0.6),
          box(cell(x, y, r), { stroke: theme.rule, strokeWidth: 1 }),
        ]),
    },
    {
      label: 'below it: effort a note',
      sign: (x, y, r) =>
        element('g', {}, [
          box(cell(x, y, r), { stroke: theme.rule, strokeWidth: 1 }),
          path(
            [
              [x - r * 0.5, y + r * 0.5],
              [x + r * 0.5, y + r * 0.5],
            ],
            { stroke: theme.ink, strokeWidth: 2 },
          ),
        ]),
    },
    {
      label: `#1 to #${NUMBERED}: the best`,
      sign: (x, y, r) => box(cell(x, y, r), { fill: one.tint, stroke: one.strong, strokeWidth: 2 }),
    },
  ];
}

interface CellPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const NUMBERED = 3;

function keyText({ harp }: HarpFit, rank: number): string {
  return `${withSigns(harp.key)}${rank <= NUMBERED ? ` #${rank}` : ''}`;
}

function drawCell(
  { rank, fit }: Ranked,
  place: CellPlace,
  { frame, small }: { readonly frame: Frame; readonly small: number },
): readonly SvgNode[] {
  const { theme } = frame;
  const { x, y, width, height } = place;
  const size = theme.textSize;
  const isBest = rank <= NUMBERED;
  const { tint, strong } = theme.chords[isBest ? 'one' : 'other'];
  const full = height * fit.playableShare;
  const word = { x: x + width / 2, fill: theme.ink, anchor: 'middle' as const };
  const key = keyText(fit, rank);
  return [
    box({ ...place, y: y + height - full, height: full }, { fill: tint }),
    box(place, { stroke: isBest ? strong : theme.rule, strokeWidth: isBest ? 2.5 : 1 }),
    say(key, { ...word, y: y + size * 1.3, size, weight: 'bold' }),
    say(percent(fit.playableShare), { ...word, y: y + size * 1.3 + small * 1.4, size: small }),
    say(effort(fit), { ...word, y: y + size * 1.3 + small * 2.7, size: small }),
  ];
}
