import type { WrittenBar } from './write-bars.js';

/**
 * Bars with a chart's choruses written once, between repeat signs, where all of them are alike. A
 * pickup or count-in stays before the repeat; a note held from one chorus into the next keeps them apart.
 */
export function foldRepeats(bars: readonly WrittenBar[], choruses: number): readonly WrittenBar[] {
  const lead = bars.filter(({ number }) => number < 1).length;
  const [before, body] = [bars.slice(0, lead), bars.slice(lead)];
  const length = body.length / choruses;
  if (choruses < 2 || !Number.isInteger(length)) return bars;
  const first = body.slice(0, length);
  const isAlike = body.every((bar, at) => sound(bar) === sound(first[at % length]));
  if (!isAlike) return bars;
  return [
    ...before,
    ...first.map((bar, at) => ({
      ...bar,
      opens: at === 0,
      closes: at === length - 1 ? choruses : 0,
    })),
  ];
}

/** What a bar sounds and shows, without where it stands. */
function sound(bar: WrittenBar | undefined): string {
  return JSON.stringify([bar?.voices, bar?.chords, bar?.tempos]);
}
