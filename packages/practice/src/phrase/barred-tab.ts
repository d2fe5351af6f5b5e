import { parseMetre } from '@reedplate/line';
import { formatTimedTab, type TimedTab } from '@reedplate/tab';
import type { Phrase } from './phrase.js';

/** Tab with rhythm and bar lines. A rest over a bar line is two; a note over one is left whole. */
export function barredTab(
  timed: readonly TimedTab[],
  metre: Phrase['metre'],
  pickupBeats = 0,
): string {
  const { beatsPerBar } = parseMetre(metre);
  const words: string[] = [];
  let beat = -pickupBeats;
  const add = (each: TimedTab): void => {
    if (words.length > 0 && isWhole(beat / beatsPerBar)) words.push('|');
    words.push(formatTimedTab([each]));
    beat += each.beats;
  };
  for (const each of timed) {
    let left = each;
    const toBar = (): number =>
      (Math.floor(beat / beatsPerBar + ROUNDING) + 1) * beatsPerBar - beat;
    while (left.marks.length === 0 && left.beats > toBar() + ROUNDING) {
      const part = toBar();
      add({ marks: [], beats: part });
      left = { marks: [], beats: left.beats - part };
    }
    add(left);
  }
  return words.join(' ');
}

/** Thirds of a beat are not exact in binary. */
const ROUNDING = 1e-6;

function isWhole(value: number): boolean {
  return Math.abs(value - Math.round(value)) < ROUNDING;
}
