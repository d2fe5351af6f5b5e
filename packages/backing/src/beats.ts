import { type Chart, chordChanges } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { type Chord, itemAt } from '@reedplate/pitch';

/** A beat of a chart, as a band counts it. */
export interface Beat {
  /** Tick it begins on. */
  readonly start: number;
  readonly ticks: number;
  /** Bar of its chorus, from 1. */
  readonly bar: number;
  /** Place in its bar, from 0. */
  readonly inBar: number;
  /** Beats in its bar. */
  readonly beatsPerBar: number;
  /** Place under its chord, from 0 where the chord came. */
  readonly underChord: number;
  /** Ticks that its chord still lasts. */
  readonly left: number;
  /** Null in a break. */
  readonly chord: Chord | null;
  /** The chord that comes on the next beat, if it is another. */
  readonly next: Chord | undefined;
  /** Whether a chorus begins with it. */
  readonly opensChorus: boolean;
}

/** Every beat of a chart from bar 1 on, with the chord that sounds on it. */
export function beatsOf(chart: Chart): readonly Beat[] {
  const { beatTicks, beatsPerBar } = parseMetre(chart.metre);
  const changes = chordChanges(chart);
  const count = chart.bars * beatsPerBar;
  const end = chart.pickup + count * beatTicks;
  let change = 0;
  let underChord = -1;
  let span = 0;
  return Array.from({ length: count }, (_, at): Beat => {
    const start = chart.pickup + at * beatTicks;
    underChord += 1;
    while ((changes[change + 1]?.start ?? Number.POSITIVE_INFINITY) <= start) {
      change += 1;
      underChord = 0;
    }
    while (itemAt(chart.spans, span).end <= start) span += 1;
    const { barOfForm, chorus } = itemAt(chart.spans, span);
    const following = changes[change + 1];
    const isLast = following !== undefined && following.start <= start + beatTicks;
    const inBar = at % beatsPerBar;
    return {
      start,
      ticks: beatTicks,
      bar: barOfForm,
      inBar,
      beatsPerBar,
      underChord,
      left: (following?.start ?? end) - start,
      chord: changes[change]?.chord ?? null,
      next: isLast ? (following.chord ?? undefined) : undefined,
      opensChorus: inBar === 0 && barOfForm === 1 && chorus > 0,
    };
  });
}
