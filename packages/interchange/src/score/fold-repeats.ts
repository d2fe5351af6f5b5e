import type { WrittenBar } from './write-bars.js';

/**
 * Bars with a chart's choruses written once, between repeat signs, where all of them are alike. A
 * pickup stays before the repeat; a note held from one chorus into the next keeps them apart.
 */
export function foldRepeats(bars: readonly WrittenBar[], choruses: number): readonly WrittenBar[] {
  const [pickup, body] = bars[0]?.number === 0 ? [bars.slice(0, 1), bars.slice(1)] : [[], bars];
  const length = body.length / choruses;
  if (choruses < 2 || !Number.isInteger(length)) return bars;
  const first = body.slice(0, length);
  const isAlike = body.every((bar, at) => sound(bar) === sound(first[at % length]));
  if (!isAlike) return bars;
  return [
    ...pickup,
    ...first.map((bar, at) => ({
      ...bar,
      opens: at === 0,
      closes: at === length - 1 ? choruses : 0,
    })),
  ];
}

/** What a bar sounds and shows, without where it stands. */
function sound(bar: WrittenBar | undefined): string {
  return JSON.stringify([bar?.voices, bar?.chords]);
}
