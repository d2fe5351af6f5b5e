/**
 * What a note is to its chord, in the order in which a note is tried:
 *
 * - `root`, `guide-tone` (third or seventh), `chord-tone` (any other tone of the chord but its
 *   ninth, eleventh and thirteenth);
 * - `blue`: the style's own notes, the flat third and flat seventh of the key over I and V, and its
 *   flat fifth where it resolves;
 * - `passing`, `neighbour`, `approach`: a note outside the chord that resolves by step to a chord
 *   tone within the window: left in the direction it came, back where it came from, or leapt to;
 * - `colour`: a ninth, eleventh or thirteenth that the symbol names, or a harmless note outside the
 *   chord, such as a sixth;
 * - `clash`: an unresolved note that is rough in the style, at least half a beat long;
 * - `unresolved`: any other note outside the chord;
 * - `unjudged`: a note where no chord sounds.
 */
export const NOTE_CLASSES = Object.freeze([
  'root',
  'guide-tone',
  'chord-tone',
  'blue',
  'passing',
  'neighbour',
  'approach',
  'colour',
  'unresolved',
  'clash',
  'unjudged',
] as const);

/** What a note is to its chord; see {@link NOTE_CLASSES}. */
export type NoteClass = (typeof NOTE_CLASSES)[number];

/** The classes as numbers, for the inner loops. */
export const CLASS = Object.freeze({
  root: 0,
  guideTone: 1,
  chordTone: 2,
  blue: 3,
  passing: 4,
  neighbour: 5,
  approach: 6,
  colour: 7,
  unresolved: 8,
  clash: 9,
  unjudged: 10,
} as const);

/** A class as its place in {@link NOTE_CLASSES}. */
export type ClassIndex = (typeof CLASS)[keyof typeof CLASS];
