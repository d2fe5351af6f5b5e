/** What may sound within one felt beat. */
export interface RhythmCell {
  /** Start and length of each note in felt beats, within 0 and 1, in order and apart. */
  readonly notes: readonly (readonly [start: number, length: number])[];
  /** Whether the note before sounds on, up to the first note of the cell. Default `false`. */
  readonly holds?: boolean;
  /** How likely it is beside the others, above 0. */
  readonly weight: number;
}

const HALF = 1 / 2;
const THIRD = 1 / 3;

/** Beats of two: even eighths here, swung where the feel says so. Weights are our own choice. */
export const CELLS_OF_TWO: readonly RhythmCell[] = Object.freeze([
  { notes: [[0, 1]], weight: 4 },
  {
    notes: [
      [0, HALF],
      [HALF, HALF],
    ],
    weight: 4,
  },
  { notes: [[0, HALF]], weight: 2 },
  { notes: [[HALF, HALF]], weight: 1.5 },
  { notes: [], weight: 1.5 },
  { notes: [], holds: true, weight: 1 },
] as const);

/** Beats of three, as in 12/8. Weights are our own choice. */
export const CELLS_OF_THREE: readonly RhythmCell[] = Object.freeze([
  { notes: [[0, 1]], weight: 4 },
  {
    notes: [
      [0, 2 * THIRD],
      [2 * THIRD, THIRD],
    ],
    weight: 4,
  },
  {
    notes: [
      [0, THIRD],
      [THIRD, THIRD],
      [2 * THIRD, THIRD],
    ],
    weight: 1.5,
  },
  { notes: [[0, 2 * THIRD]], weight: 2 },
  { notes: [[2 * THIRD, THIRD]], weight: 1.5 },
  { notes: [], weight: 1.5 },
  { notes: [], holds: true, weight: 1 },
] as const);
