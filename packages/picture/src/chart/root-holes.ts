import { targetsOf } from '@reedplate/chord-tone';
import type { Harp, PlayerLike } from '@reedplate/layout';
import type { Chord } from '@reedplate/pitch';
import { formatSounding } from '@reedplate/tab';

/** How many holes a bar has room for. */
const MOST = 2;
/** Holes where most blues is played; common practice. */
const HOME = { from: 1, to: 6 };

/** The holes that give the root of a chord, in tab: unbent ones in the low half first, two at most. */
export function rootHoles(chord: Chord, harp: Harp, level: PlayerLike): readonly string[] {
  const roots = targetsOf(chord, harp, { level }).filter(({ degree }) => degree === '1');
  const natural = roots.filter(({ sounding }) => sounding.technique === 'natural');
  const best = natural.length > 0 ? natural : roots;
  const home = best.filter(({ sounding: { hole } }) => hole >= HOME.from && hole <= HOME.to);
  return (home.length > 0 ? home : best)
    .slice(0, MOST)
    .map(({ sounding }) => formatSounding(sounding));
}
