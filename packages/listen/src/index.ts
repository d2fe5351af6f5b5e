export { type HeardNotes, type HearNotesOptions, hearNotes } from './hear-notes.js';
export type { Sound } from './sound.js';
export { readWav } from './wav/read-wav.js';
export { writeWav } from './wav/write-wav.js';
