import {
  type Breath,
  type Harp,
  type Sounding,
  type SoundingOptions,
  soundingsAt,
  soundingsOfPitch,
  toPlayer,
} from '@reedplate/layout';
import { HIGHEST_MIDI, itemAt, LOWEST_MIDI } from '@reedplate/pitch';

/** What sounds at once, from the low end: one for a note, several of the same breath for a chord. */
export type Grip = readonly [Sounding, ...Sounding[]];

/** One way to sound the pitches of an event. */
export interface Choice {
  readonly soundings: Grip;
  readonly breath: Breath;
  readonly lowHole: number;
  readonly highHole: number;
  /** Whether the note is a bend or an overbend. */
  readonly isBent: boolean;
  /** Stretches of silent holes between the sounding ones, which the tongue blocks. */
  readonly blocked: number;
}

/** Most holes a mouth covers at once. Common practice, no source. */
export const WIDEST_MOUTH = 5;

/**
 * Every way to sound pitches together: a note by any technique; a chord by unbent notes on one
 * breath within five holes. In a fixed order: hole 1 up, blow before draw for a note; blow before
 * draw, then hole 1 up for a chord.
 */
export function choicesOf(
  harp: Harp,
  pitches: readonly number[],
  options: SoundingOptions,
): readonly Choice[] {
  const [pitch] = pitches;
  if (pitches.length === 1 && pitch !== undefined) {
    // A line moved far is asked about pitches that no harp and no MIDI number has.
    if (pitch < LOWEST_MIDI || pitch > HIGHEST_MIDI) return [];
    return soundingsOfPitch(harp, pitch, options).map((sounding) => makeChoice([sounding]));
  }
  const { level = 'bends' } = options;
  const { splits } = toPlayer(level);
  // Within a chord 2 draw is had also by who does not yet hold it alone.
  const chordal = typeof level === 'string' ? level : { ...level, holdsTwoDraw: true };
  return BREATHS.flatMap((breath) =>
    gripsOf(harp, pitches, breath, { ...options, level: chordal }).map(makeChoice),
  ).filter(
    ({ blocked, lowHole, highHole }) =>
      blocked === 0 || splits.some((width) => width === highHole - lowHole + 1),
  );
}

const BREATHS: readonly Breath[] = ['blow', 'draw'];

/** A way for each selection of one hole a pitch; two holes may have the same reed. */
function gripsOf(
  harp: Harp,
  pitches: readonly number[],
  breath: Breath,
  options: SoundingOptions,
): readonly Grip[] {
  const row = harp.holes
    .flatMap(({ hole }) => soundingsAt(harp, hole, breath, options))
    .filter(({ technique }) => technique === 'natural');
  const columns = pitches.map((pitch) => row.filter((sounding) => sounding.pitch === pitch));
  return columns
    .reduce<readonly (readonly Sounding[])[]>(
      (grips, column) => grips.flatMap((grip) => column.map((sounding) => [...grip, sounding])),
      [[]],
    )
    .map((grip) => [...grip].sort((a, b) => a.hole - b.hole) as unknown as Grip)
    .filter((grip) => spanOf(grip) <= WIDEST_MOUTH);
}

const spanOf = (grip: Grip): number => itemAt(grip, -1).hole - grip[0].hole + 1;

/** A choice of the soundings given, from the low end. */
export function makeChoice(soundings: Grip): Choice {
  const [lowest] = soundings;
  return {
    soundings: Object.freeze(soundings),
    breath: lowest.breath,
    lowHole: lowest.hole,
    highHole: itemAt(soundings, -1).hole,
    isBent: lowest.technique !== 'natural',
    blocked: soundings.filter(({ hole }, at) => hole - (soundings[at - 1]?.hole ?? hole) > 1)
      .length,
  };
}
