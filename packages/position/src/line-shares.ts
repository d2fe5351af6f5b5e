import type { Line } from '@reedplate/line';
import { type Easiest, easeOf } from './easiest.js';

/** A line, as a harp has it, in the octave that suits it best. */
export interface LineShares {
  /** Octaves by which the line is moved; 0 where that is as good as any. */
  readonly octaves: number;
  /** Shares of its sounding time, together 1. */
  readonly natural: number;
  readonly bent: number;
  readonly overbent: number;
  readonly missing: number;
  /** Mean ease over its time, 0 to 1. */
  readonly ease: number;
}

const OCTAVES_TRIED = [0, -1, 1, -2, 2, -3, 3, -4, 4, -5, 5] as const;

/** How a harp has a line, at its own pitch or moved by octaves; 0 and then small moves on a tie. */
export function lineShares(easiest: Easiest, line: Line): LineShares {
  const fits = OCTAVES_TRIED.map((octaves) => fitAt(easiest, line, octaves));
  return Object.freeze(fits.reduce((best, fit) => (fit.ease > best.ease ? fit : best)));
}

function fitAt({ byPitch }: Easiest, { notes }: Line, octaves: number): LineShares {
  const time = { natural: 0, bent: 0, overbent: 0, missing: 0 };
  let ease = 0;
  let total = 0;
  for (const { pitch, duration } of notes) {
    const easiest = byPitch.get(pitch + 12 * octaves);
    time[easiest === undefined ? 'missing' : GROUP_OF_TECHNIQUE[easiest.technique]] += duration;
    ease += easiest === undefined ? 0 : duration * easeOf(easiest);
    total += duration;
  }
  return {
    octaves,
    natural: time.natural / total,
    bent: time.bent / total,
    overbent: time.overbent / total,
    missing: time.missing / total,
    ease: ease / total,
  };
}

const GROUP_OF_TECHNIQUE = {
  natural: 'natural',
  bend: 'bent',
  'valved-bend': 'bent',
  overblow: 'overbent',
  overdraw: 'overbent',
} as const;
