import { type Metre, parseMetre } from '@reedplate/line';
import type { Frame } from '../svg/frame.js';
import { textWidth } from '../text/text-width.js';
import { withSigns } from '../text/with-signs.js';
import { lanesOf, layLabels, type PlacedLabel } from './lay-labels.js';
import type { LineChord, LineNote } from './line-notes.js';

/** A row of bars across the page. */
export interface System {
  /** First bar, 0 for a pickup. */
  readonly firstBar: number;
  readonly bars: number;
  /** Ticks after bar 1. */
  readonly from: number;
  readonly to: number;
  readonly notes: readonly LineNote[];
  readonly chords: readonly LineChord[];
  readonly labels: readonly PlacedLabel[];
  readonly names: readonly PlacedLabel[];
}

/** What systems are laid out from. */
export interface LineContent {
  readonly metre: Metre;
  readonly notes: readonly LineNote[];
  readonly chords: readonly LineChord[];
}

/** The systems of a line, and how many bars each holds at most. */
export interface SystemLayout {
  readonly systems: readonly System[];
  readonly barsPerSystem: number;
  readonly barTicks: number;
  readonly beatTicks: number;
  readonly beatsPerBar: number;
}

/** A picture narrower than this is for a telephone, where length costs nothing. */
const TELEPHONE = 480;

/**
 * Bars a row, and the lanes of tab it may take, from the best on. Tab on one lane reads like a line of text; on
 * paper two lanes are better than a row for every bar.
 */
const WIDE_CHOICES = [
  { bars: 4, lanes: 1 },
  { bars: 2, lanes: 1 },
  { bars: 4, lanes: 2 },
  { bars: 2, lanes: 2 },
] as const;
const NARROW_CHOICES = [
  { bars: 4, lanes: 1 },
  { bars: 2, lanes: 1 },
] as const;

/** Lays a line out in systems of four bars, or two or one where notes are too close for that. */
export function laySystems(frame: Frame, content: LineContent): SystemLayout {
  const choices = frame.width < TELEPHONE ? NARROW_CHOICES : WIDE_CHOICES;
  for (const { bars, lanes } of choices) {
    const layout = layWith(frame, content, bars);
    if (lanesIn(layout) <= lanes) return layout;
  }
  return layWith(frame, content, 1);
}

function lanesIn({ systems }: SystemLayout): number {
  return Math.max(...systems.flatMap(({ labels, names }) => [lanesOf(labels), lanesOf(names)]));
}

function layWith(frame: Frame, content: LineContent, barsPerSystem: number): SystemLayout {
  const { metre, notes } = content;
  const { barTicks, beatTicks, beatsPerBar } = parseMetre(metre);
  const hasPickup = (notes[0]?.start ?? 0) < 0;
  const lastTick = Math.max(...notes.map(({ end }) => end));
  const lastBar = Math.max(1, Math.ceil(lastTick / barTicks));
  const systems: System[] = [];
  const firstBar = Math.max(1, Math.floor((notes[0]?.start ?? 0) / barTicks) + 1);
  for (let bar = firstBar; bar <= lastBar; bar += barsPerSystem) {
    const bars = Math.min(barsPerSystem, lastBar - bar + 1);
    const from = (bar - 1) * barTicks;
    systems.push(
      makeSystem(
        frame,
        content,
        { firstBar: bar, bars, from, to: from + bars * barTicks },
        barsPerSystem,
      ),
    );
  }
  if (hasPickup) {
    systems.unshift(
      makeSystem(frame, content, { firstBar: 0, bars: 1, from: -barTicks, to: 0 }, barsPerSystem),
    );
  }
  return { systems, barsPerSystem, barTicks, beatTicks, beatsPerBar };
}

type Span = Pick<System, 'firstBar' | 'bars' | 'from' | 'to'>;

function makeSystem(
  frame: Frame,
  { notes, chords }: LineContent,
  span: Span,
  barsPerSystem: number,
): System {
  const isWithin = ({ start, end }: { start: number; end: number }): boolean =>
    start < span.to && end > span.from;
  const here = notes.filter(isWithin);
  const changes = chords.filter(isWithin);
  const size = frame.theme.textSize;
  const xOf = xIn(frame, span, barsPerSystem);
  const labelled = here.filter(({ start }) => start >= span.from);
  const edge = { right: frame.right, gap: size * 0.35 };
  return {
    ...span,
    notes: here,
    chords: changes,
    labels: layLabels(
      labelled.map(({ label, start }) => ({
        text: label,
        x: xOf(start),
        width: textWidth(label, size, 'bold'),
      })),
      edge,
    ),
    names: layLabels(
      changes.map(({ name, start }) => {
        const text = withSigns(name);
        // The mark of the chord's step stands before its name.
        const width = textWidth(text, size, 'bold') + size * 1.1;
        return { text, x: xOf(Math.max(start, span.from)), width };
      }),
      edge,
    ),
  };
}

/** Where a tick lies across the page. */
export function xIn(
  { left, right }: Frame,
  { from, to, bars }: Span,
  barsPerSystem: number,
): (tick: number) => number {
  const width = ((right - left) * bars) / barsPerSystem;
  return (tick) => left + ((tick - from) / (to - from)) * width;
}
