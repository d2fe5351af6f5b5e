import { type Chart, type Feel, makeChart, makeForm } from '@reedplate/form';
import type { Metre } from '@reedplate/line';
import { itemAt, type Key } from '@reedplate/pitch';
import type { PlayedBar } from './form/played-bars.js';

/** What a chart of heard bars is called, and how it is felt. */
export interface ChartHead {
  /** Id of the form that is followed, or `heard`. */
  readonly id: string;
  readonly key: Key;
  readonly metre: Metre;
  readonly feel: Feel;
  readonly tempo: number;
}

/** The chart of bars as they were heard, which knows what bar of which chorus each is. */
export function chartOfBars(bars: readonly PlayedBar[], head: ChartHead): Chart {
  const { id, key, metre, feel, tempo } = head;
  const played = makeForm(
    bars.map(({ chords }) => chords),
    { id, metre, feel },
  );
  const chart = makeChart({ ...played, mode: key.mode }, key, { tempo });
  const spans = chart.spans.map((span) => {
    const { chorus, barOfForm } = bars[span.bar - 1] as PlayedBar;
    return { ...span, chorus, barOfForm };
  });
  return { ...chart, choruses: itemAt(bars, -1).chorus, spans };
}
