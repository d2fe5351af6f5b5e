// What speaks for and against a part being the tune. The weights are our own; they are whole, so that
// two parts with as much for them tie on every machine.

/** General MIDI program of the harmonica, counted from 1. */
export const HARMONICA_PROGRAM = 23;

/** Words in names of parts that carry the tune. */
export const MELODY_NAME = /melod|harmonica|\bharp\b|vocal|voice|lead|solo|tune|singer/iu;

/** Words in names of parts that go with it. */
export const BACKING_NAME = /bass|drum|perc|rhythm|chord|\bcomp|accomp|backing|\bpad/iu;

/** First and last of programs of General MIDI, counted from 1. */
type ProgramRange = readonly [first: number, last: number];

/** Families that play melodies: strings alone, brass, reeds, pipes, synth leads. General MIDI 1. */
export const MELODY_PROGRAMS: readonly ProgramRange[] = [
  [41, 44],
  [57, 61],
  [65, 80],
  [81, 88],
];

/** Basses, ensembles and hits, pads and effects, percussion and sounds. General MIDI 1. */
export const BACKING_PROGRAMS: readonly ProgramRange[] = [
  [33, 40],
  [49, 52],
  [56, 56],
  [89, 104],
  [113, 128],
];

/** MIDI numbers that melodies lie within: G3, the lowest note of common harps, to D7 (common practice). */
export const MELODY_RANGE = { low: 55, high: 98 } as const;

/** Points for and against. */
export const WEIGHTS = {
  harmonica: 400,
  melodyName: 400,
  melodyProgram: 150,
  backingName: -400,
  backingProgram: -300,
  /** For a part that begins no note while another sounds, and a share of it for others. */
  singleNotes: 300,
  /** For a part whose notes all lie within the range of melodies, and a share of it for others. */
  range: 200,
  /** Of two parts alike the higher, for each semitone on average. */
  semitone: 2,
  /** Against a part of hardly any notes: an effect. */
  few: -600,
} as const;

/** A part with fewer of the notes of the busiest part with pitch is an effect, unless its name says more. */
export const LEAST_SHARE = 0.02;
