import type { Chart, ChordSpan } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';

/** A bar as a chart shows it. */
export interface GridBar {
  /** Bar of the form, from 1; in the introduction of the introduction. */
  readonly number: number;
  readonly spans: readonly ChordSpan[];
  /** Whether its chords are those of the bar before it. */
  readonly repeatsLast: boolean;
}

/** Bars that are played one after another as often as is said. */
export interface GridSection {
  /** What it is called where there are several. */
  readonly name: string;
  readonly times: number;
  /** Bar of the chart that it begins with, from 1. */
  readonly first: number;
  readonly bars: readonly GridBar[];
  /** Index of the first bar of the turnaround; undefined where the bars hold none. */
  readonly turnaround: number | undefined;
}

/** The sections of a chart: its introduction, then choruses, those alike in a row as one. */
export function sectionsOf(chart: Chart): readonly GridSection[] {
  const byBar = barsOf(chart);
  const intro = byBar.slice(0, chart.intro ?? 0);
  const rest = byBar.slice(intro.length);
  const length = rest.length / chart.choruses;
  const sections: GridSection[] = [];
  if (intro.length > 0) sections.push(sectionOf('Introduction', intro, 1));
  for (let chorus = 0; chorus < chart.choruses; chorus += 1) {
    const bars = rest.slice(chorus * length, (chorus + 1) * length);
    const last = sections.at(-1);
    if (chorus > 0 && last !== undefined && isAlike(last.bars, bars)) {
      sections[sections.length - 1] = { ...last, times: last.times + 1 };
    } else {
      const first = intro.length + chorus * length + 1;
      sections.push(sectionOf(`From chorus ${chorus + 1}`, bars, first));
    }
  }
  return sections;
}

function barsOf({ spans, bars }: Chart): readonly (readonly ChordSpan[])[] {
  const byBar: ChordSpan[][] = Array.from({ length: bars }, () => []);
  for (const span of spans) byBar[span.bar - 1]?.push(span);
  return byBar;
}

function sectionOf(
  name: string,
  bars: readonly (readonly ChordSpan[])[],
  first: number,
): GridSection {
  const shown = bars.map((spans, at) => ({
    number: at + 1,
    spans,
    repeatsLast: at > 0 && sameBar(bars[at - 1] ?? [], spans),
  }));
  return { name, times: 1, first, bars: shown, turnaround: turnaroundOf(shown) };
}

function isAlike(bars: readonly GridBar[], others: readonly (readonly ChordSpan[])[]): boolean {
  return bars.every(({ spans }, at) => sameBar(spans, others[at] ?? []));
}

function sameBar(a: readonly ChordSpan[], b: readonly ChordSpan[]): boolean {
  return (
    a.length === b.length &&
    a.every(({ beat, chord }, at) => beat === b[at]?.beat && chord?.symbol === b[at]?.chord?.symbol)
  );
}

const SHORTEST_FORM = 8;

/**
 * The last two bars of a form lead back to its beginning where their harmony moves: the turnaround.
 * Common practice.
 */
function turnaroundOf(bars: readonly GridBar[]): number | undefined {
  const first = bars.length - 2;
  const symbols = new Set(
    bars.slice(first).flatMap(({ spans }) => spans.map(({ chord }) => chord?.symbol)),
  );
  return bars.length >= SHORTEST_FORM && symbols.size > 1 ? first : undefined;
}

/** Where a chord stands within its bar, as a share of the bar from 0 to less than 1. */
export function shareOfBar({ beat }: ChordSpan, { metre }: Chart): number {
  return (beat - 1) / parseMetre(metre).beatsPerBar;
}
