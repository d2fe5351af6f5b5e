/** Semitones of the seven steps of the major scale above its tonic: also the natural notes above C. */
export const MAJOR_SCALE: readonly number[] = Object.freeze([0, 2, 4, 5, 7, 9, 11]);
