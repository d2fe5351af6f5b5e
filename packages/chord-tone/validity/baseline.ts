import { toPitchClass } from '@reedplate/pitch';
import type { Solo } from './read-solos.js';

const BEAT = 960;
const BAR = 4 * BEAT;

/**
 * What any score must beat: the share of chord tones by duration, counted 2 on the first beat, 1.5
 * on the third and 1 elsewhere.
 */
export function plainShare({ line, chart }: Solo): number {
  let all = 0;
  let tones = 0;
  let at = 0;
  for (const { start, duration, pitch } of line.notes) {
    while (at + 1 < chart.spans.length && (chart.spans[at]?.end ?? 0) <= start) at += 1;
    const chord = chart.spans[at]?.chord ?? null;
    if (chord === null) continue;
    const weight = strengthOf(start % BAR) * duration;
    const isTone = chord.tones.some(({ pitchClass }) => pitchClass === toPitchClass(pitch));
    all += weight;
    tones += isTone ? weight : 0;
  }
  return all === 0 ? 0 : tones / all;
}

function strengthOf(place: number): number {
  if (place === 0) return 2;
  return place === 2 * BEAT ? 1.5 : 1;
}
