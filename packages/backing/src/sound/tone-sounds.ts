/** How an instrument with pitches sounds. */
export interface ToneSound {
  /** Strength of each harmonic, from the first; together 1. */
  readonly harmonics: readonly number[];
  /** Seconds from silence to full loudness. */
  readonly attack: number;
  /** Seconds in which the first harmonic loses all but a third; higher ones die sooner by their number. */
  readonly decay: number;
  /** Seconds from its end to silence. */
  readonly release: number;
  /** How loud it is in the band, beside the others. */
  readonly level: number;
}

/** The instruments of the small band. Our own choice, made by ear and by spectrum. */
export const TONE_SOUNDS = {
  /** A plucked string, dark soon after it is struck. */
  bass: {
    harmonics: [0.46, 0.28, 0.13, 0.08, 0.05],
    attack: 0.006,
    decay: 1.1,
    release: 0.06,
    level: 0.5,
  },
  /** A clean guitar or an electric piano. */
  chords: {
    harmonics: [0.5, 0.24, 0.1, 0.1, 0.03, 0.03],
    attack: 0.004,
    decay: 0.9,
    release: 0.05,
    level: 0.17,
  },
  /** An organ: it sounds for as long as it is held. */
  organ: {
    harmonics: [0.52, 0.26, 0.1, 0.12],
    attack: 0.012,
    decay: 60,
    release: 0.06,
    level: 0.13,
  },
  /** A free reed, for a line that is played on top. */
  reed: {
    harmonics: [0.3, 0.24, 0.2, 0.1, 0.08, 0.05, 0.03],
    attack: 0.025,
    decay: 60,
    release: 0.04,
    level: 0.34,
  },
} as const satisfies Readonly<Record<string, ToneSound>>;

/** An instrument of the small band that has pitches. */
export type ToneName = keyof typeof TONE_SOUNDS;

/** General MIDI programs, counted from 1: organs, reeds, guitars and basses stand in families of eight. */
const ORGANS = [17, 21] as const;
const REEDS = [22, 24] as const;
const BASSES = [33, 40] as const;

/** The instrument of the small band that comes nearest to a General MIDI program, counted from 1. */
export function toneOfProgram(program: number | undefined): ToneName {
  const isOf = ([first, last]: readonly [number, number]): boolean =>
    program !== undefined && program >= first && program <= last;
  if (isOf(ORGANS)) return 'organ';
  if (isOf(REEDS)) return 'reed';
  return isOf(BASSES) ? 'bass' : 'chords';
}
