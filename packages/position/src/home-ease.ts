import type { Harp } from '@reedplate/layout';
import { type Key, parseChord, toPitchClass } from '@reedplate/pitch';
import type { Easiest } from './easiest.js';
import { reachOf } from './reach.js';
import { wholeChordOn } from './whole-chord.js';

/** What a tonic is worth with its chord on neighbouring holes, and with its fifth as an unbent note. */
const SHARE_OF_EACH = 0.5;

/**
 * How well a harp is at home on the tonic, 0 to 1: half for a tonic triad of the key's mode that lies
 * on neighbouring holes of one breath, half for an unbent fifth above it. In 6th position there is
 * neither, and nothing to rest on.
 */
export function homeEase(harp: Harp, easiest: Easiest, { tonic, mode, pitchClass }: Key): number {
  const chord = parseChord(mode === 'minor' ? `${tonic}m` : tonic);
  const whole = wholeChordOn(harp, chord, easiest.hasNatural) === undefined ? 0 : SHARE_OF_EACH;
  const { best } = reachOf(easiest, toPitchClass(pitchClass + 7));
  return whole + (best === 'natural' ? SHARE_OF_EACH : 0);
}
