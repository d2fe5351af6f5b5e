import type { Chart, ChordSpan } from '@reedplate/form';
import { parseMetre } from '@reedplate/line';
import { type Chord, itemAt } from '@reedplate/pitch';

/** A time at which a line sounds something of a chord. */
export interface FigurePlace {
  readonly span: ChordSpan & { readonly chord: Chord };
  readonly start: number;
  readonly end: number;
  readonly beat: number;
}

/** Places of one chord that are played as one figure; at least one. */
export type Passage = readonly [FigurePlace, ...FigurePlace[]];

/** The chords of a chart, each span by itself. */
export function passagesBySpan({ spans }: Chart): readonly Passage[] {
  return soundingSpans(spans).map((span) => {
    const { start, end, beat } = span;
    return [{ span, start, end, beat }];
  });
}

/** The chords of a chart beat by beat, each for as long as it stays. */
export function passagesByBeat({ spans, metre }: Chart): readonly Passage[] {
  const { beatTicks } = parseMetre(metre);
  const passages: [FigurePlace, ...FigurePlace[]][] = [];
  for (const span of soundingSpans(spans)) {
    const beats = beatsOf(span, beatTicks);
    const last = passages.at(-1);
    const before = last?.at(-1);
    if (before?.end === span.start && before.span.chord.symbol === span.chord.symbol) {
      last?.push(...beats);
    } else {
      passages.push([itemAt(beats, 0), ...beats.slice(1)]);
    }
  }
  return passages;
}

function soundingSpans(spans: readonly ChordSpan[]): readonly FigurePlace['span'][] {
  return spans.flatMap((span) => (span.chord === null ? [] : [{ ...span, chord: span.chord }]));
}

function beatsOf(span: FigurePlace['span'], beatTicks: number): readonly FigurePlace[] {
  const { start, end, beat } = span;
  return Array.from({ length: Math.ceil((end - start) / beatTicks) }, (_, count) => {
    const from = start + count * beatTicks;
    return { span, start: from, end: Math.min(end, from + beatTicks), beat: beat + count };
  });
}
