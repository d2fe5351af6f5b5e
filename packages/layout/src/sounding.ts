/** The two breaths. */
export type Breath = 'blow' | 'draw';

/** A hole of a harp, counted from the low end. */
export type Hole = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15 | 16;

/** How a pitch is got from a hole. */
export type Technique = 'natural' | 'bend' | 'overblow' | 'overdraw' | 'valved-bend';

/** What a player can do: natural notes only; bends too; bends and overbends. */
export type TechniqueLevel = 'natural' | 'bends' | 'overbends';

/** One way to sound one pitch on a harp. */
export interface Sounding {
  readonly hole: Hole;
  readonly breath: Breath;
  readonly technique: Technique;
  /** Semitones away from the natural note of the breath: 0 natural, 1 and up for a bend, 1 for an overbend above the higher reed. */
  readonly depth: number;
  /** MIDI number. */
  readonly pitch: number;
}
