// One player

export { type HeardNotes, type HearNotesOptions, hearNotes } from './hear-notes.js';

// A band

export { type BandOfLines, bandOfLines } from './band/band-of-lines.js';
export type { BandOptions } from './band/band-reading.js';
export { hearBand } from './band/hear-band.js';
export type {
  BandConfidence,
  BandReading,
  HeardBand,
  HeardBar,
  HeardForm,
} from './band/heard-band.js';

// Sound

export type { Sound } from './sound.js';
export { readWav } from './wav/read-wav.js';
export { writeWav } from './wav/write-wav.js';
