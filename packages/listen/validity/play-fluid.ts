import { writeMidi } from '@reedplate/interchange';
import { lineFromSeconds, type NoteInSeconds } from '@reedplate/line';
import { soundOfMidi } from '../../../scripts/lib/render-midi.js';
import type { Sound } from '../src/sound.js';
import { RATE } from './play-additive.js';

/** A harmonica of a sound font, as fluidsynth plays it, dry. */
export function playFluid(notes: readonly NoteInSeconds[], font: string): Sound {
  const bytes = writeMidi({ line: lineFromSeconds(notes, { tempo: 60 }) });
  return soundOfMidi(bytes, { font, rate: RATE });
}
