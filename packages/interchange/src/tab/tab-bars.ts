import type { Chart } from '@reedplate/form';
import { type Line, parseMetre } from '@reedplate/line';
import { formatTab, type TabDialectId, type TimedTab, withBeats } from '@reedplate/tab';

/** A word of a bar and the tick of the bar at which it stands. */
export interface BarWord {
  readonly offset: number;
  readonly text: string;
}

/** What stands in a bar: tab, and the chords above it. */
export interface TabBar {
  readonly tab: readonly BarWord[];
  readonly chords: readonly BarWord[];
}

/** Bars in time: the first may be a pickup. */
interface BarGrid {
  readonly pickup: number;
  readonly barTicks: number;
  readonly beatTicks: number;
}

/** The word where no chord sounds. */
export const NO_CHORD = 'N.C.';

/**
 * The bars of a line: each word of tab in the bar in which it begins, so that a note held over a bar line
 * stands once, with its whole length; a rest is cut at bar lines.
 */
export function tabBarsOf(
  timed: readonly TimedTab[],
  line: Line,
  { chart, dialect }: { readonly chart?: Chart | undefined; readonly dialect: TabDialectId },
): readonly TabBar[] {
  const { barTicks, beatTicks } = parseMetre(line.metre);
  const grid = { pickup: line.pickup, barTicks, beatTicks };
  const counted = (line.countIn ?? 0) * barTicks;
  const bars: { tab: BarWord[]; chords: BarWord[] }[] = [];
  const barAt = (tick: number) => {
    const index = barIndex(tick, grid);
    while (bars.length <= index) bars.push({ tab: [], chords: [] });
    return bars[index] as (typeof bars)[number];
  };
  for (const { tick, text } of wordsOf(timed, grid, { dialect, until: endOf(chart) + counted })) {
    barAt(tick).tab.push({ offset: tick - startOf(barIndex(tick, grid), grid), text });
  }
  for (const { start, end, chord } of chart?.spans ?? []) {
    const tick = start + counted;
    const symbol = chord?.symbol ?? NO_CHORD;
    const text = end - start === barTicks ? symbol : withBeats(symbol, (end - start) / beatTicks);
    barAt(tick).chords.push({ offset: tick - startOf(barIndex(tick, grid), grid), text });
  }
  return bars;
}

function endOf(chart: Chart | undefined): number {
  return chart?.spans.at(-1)?.end ?? 0;
}

/** The bar of a tick, counted from 0; a pickup is one. */
function barIndex(tick: number, { pickup, barTicks }: BarGrid): number {
  if (tick < pickup) return 0;
  return Math.floor((tick - pickup) / barTicks) + (pickup > 0 ? 1 : 0);
}

/** The tick at which a bar begins. */
function startOf(index: number, { pickup, barTicks }: BarGrid): number {
  if (pickup === 0) return index * barTicks;
  return index === 0 ? 0 : pickup + (index - 1) * barTicks;
}

interface PlacedTab {
  readonly tick: number;
  readonly text: string;
}

function wordsOf(
  timed: readonly TimedTab[],
  grid: BarGrid,
  { dialect, until }: { readonly dialect: TabDialectId; readonly until: number },
): readonly PlacedTab[] {
  const words: PlacedTab[] = [];
  let at = 0;
  for (const { marks, beats } of timed) {
    const end = at + Math.round(beats * grid.beatTicks);
    if (marks.length === 0) words.push(...restsOf(at, end, grid));
    else {
      const text = withBeats(formatTab([marks], { dialect }), (end - at) / grid.beatTicks);
      words.push({ tick: at, text });
    }
    at = end;
  }
  return [...words, ...restsOf(at, until, grid)];
}

/** A rest, a piece for each bar. */
function restsOf(from: number, to: number, grid: BarGrid): readonly PlacedTab[] {
  const rests: PlacedTab[] = [];
  for (let at = from; at < to; ) {
    const end = Math.min(to, startOf(barIndex(at, grid) + 1, grid));
    rests.push({ tick: at, text: withBeats('r', (end - at) / grid.beatTicks) });
    at = end;
  }
  return rests;
}
