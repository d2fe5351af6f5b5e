import { HIGHEST_MIDI } from '@reedplate/pitch';
import type { Bend } from './bends.js';

/** A note as it was struck, in the file's ticks. */
export interface StruckNote {
  readonly pitch: number;
  readonly velocity: number;
  readonly from: number;
  readonly to: number;
}

/** A stretch of a note on one semitone, with the bends that sound in it. */
export interface BentPiece {
  readonly pitch: number;
  readonly from: number;
  readonly to: number;
  readonly bends: readonly Bend[];
}

/** A bend held for less than this (a sixteenth of a quarter note) is on its way to another. */
const SHORTEST_BEND = 60;

/** A note cut where its bend passes from one semitone to the next. */
export function cutNote(
  { pitch, from, to }: StruckNote,
  bends: readonly Bend[],
  scale: number,
): readonly BentPiece[] {
  const pieces: { pitch: number; from: number; to: number; bends: Bend[] }[] = [];
  let leading: Bend[] = [];
  for (const [at, bend] of bends.entries()) {
    const end = bends[at + 1]?.tick ?? to;
    const bent = Math.min(HIGHEST_MIDI, Math.max(0, pitch + Math.round(bend.semitones)));
    const isGlide = (end - bend.tick) * scale < SHORTEST_BEND && at < bends.length - 1;
    const last = pieces.at(-1);
    if (last === undefined && isGlide) {
      leading.push(bend);
    } else if (last === undefined) {
      pieces.push({ pitch: bent, from, to: end, bends: [...leading, bend] });
      leading = [];
    } else if (last.pitch === bent || isGlide) {
      last.to = end;
      last.bends.push(bend);
    } else {
      pieces.push({ pitch: bent, from: bend.tick, to: end, bends: [bend] });
    }
  }
  return pieces;
}
