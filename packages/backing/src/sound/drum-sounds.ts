import type { DrumName } from '../groove.js';

/** A tone of a drum: a sine whose pitch falls, and which dies away. */
export interface DrumTone {
  /** Share of full loudness. */
  readonly level: number;
  /** Hertz as it is struck, and where it falls to. */
  readonly from: number;
  readonly to: number;
  /** Seconds in which all but a third of the fall, and of the loudness, is gone. */
  readonly fall: number;
  readonly decay: number;
}

/** The noise of a drum: what lies above a frequency, dying away. */
export interface DrumNoise {
  readonly level: number;
  /** Hertz below which it is thinned out. */
  readonly above: number;
  readonly decay: number;
}

/** How a drum sounds. */
export interface DrumSound {
  readonly seconds: number;
  readonly tones: readonly DrumTone[];
  readonly noise?: DrumNoise;
}

/** A tone that keeps its pitch. */
const ringing = (level: number, hertz: number, decay: number): DrumTone => ({
  level,
  from: hertz,
  to: hertz,
  fall: 1,
  decay,
});

/** A plate of metal: tones that belong to no scale. */
const metal = (level: number, decay: number, hertz: readonly number[]): readonly DrumTone[] =>
  hertz.map((each) => ringing(level / hertz.length, each, decay));

const PLATE = [3170, 4310, 5230, 6740, 7890] as const;

/** The drums of the small kit. Our own choice, made by ear and by spectrum; no recording is in them. */
export const DRUM_SOUNDS: Readonly<Record<DrumName, DrumSound>> = {
  kick: {
    seconds: 0.35,
    tones: [{ level: 0.9, from: 150, to: 48, fall: 0.03, decay: 0.12 }],
    noise: { level: 0.1, above: 1200, decay: 0.006 },
  },
  snare: {
    seconds: 0.3,
    tones: [ringing(0.3, 185, 0.06), ringing(0.15, 331, 0.04)],
    noise: { level: 0.55, above: 1500, decay: 0.07 },
  },
  rim: {
    seconds: 0.08,
    tones: [ringing(0.5, 1710, 0.012), ringing(0.3, 720, 0.01)],
    noise: { level: 0.2, above: 2500, decay: 0.006 },
  },
  hat: {
    seconds: 0.12,
    tones: metal(0.25, 0.02, PLATE),
    noise: { level: 0.75, above: 7000, decay: 0.022 },
  },
  pedalHat: {
    seconds: 0.1,
    tones: metal(0.2, 0.012, PLATE),
    noise: { level: 0.6, above: 5500, decay: 0.014 },
  },
  ride: {
    seconds: 0.7,
    tones: metal(0.55, 0.18, PLATE),
    noise: { level: 0.35, above: 6000, decay: 0.05 },
  },
  crash: {
    seconds: 1.6,
    tones: metal(0.3, 0.35, PLATE),
    noise: { level: 0.7, above: 4200, decay: 0.38 },
  },
  tom: {
    seconds: 0.4,
    tones: [{ level: 0.85, from: 170, to: 105, fall: 0.06, decay: 0.13 }],
    noise: { level: 0.1, above: 900, decay: 0.012 },
  },
};

/** How loud each is in the band, beside the others. */
export const DRUM_LEVELS: Readonly<Record<DrumName, number>> = {
  kick: 0.6,
  snare: 0.36,
  rim: 0.34,
  hat: 0.16,
  pedalHat: 0.1,
  ride: 0.16,
  crash: 0.26,
  tom: 0.4,
};
