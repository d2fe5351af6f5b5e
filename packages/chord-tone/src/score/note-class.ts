/**
 * What a note is to its chord, in the order in which a note is tried:
 *
 * - `root`, `guide-tone` (third or seventh), `chord-tone` (any other tone of the chord but its
 *   ninth, eleventh and thirteenth);
 * - `idiom`: a turn of the blues over any chord, by its root: flat third into third or down to the
 *   root, fourth into that flat third, flat fifth into that fourth;
 * - `blue`: the style's own notes, the flat third and flat seventh of the key over I and V, and its
 *   flat fifth where it resolves;
 * - `passing`, `neighbour`, `approach`: a note outside the chord that resolves by step to a chord
 *   tone within the window: left in the direction it came, back where it came from, or leapt to;
 * - `leaning`: one that resolves so, but is longer than its resolution and stands on a stronger place;
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
  'idiom',
  'blue',
  'passing',
  'neighbour',
  'approach',
  'leaning',
  'colour',
  'unresolved',
  'clash',
  'unjudged',
] as const);

/** What a note is to its chord; see {@link NOTE_CLASSES}. */
export type NoteClass = (typeof NOTE_CLASSES)[number];

/** Whether notes of a class are tones of their chord. */
export function isChordTone(noteClass: NoteClass): boolean {
  return noteClass === 'root' || noteClass === 'guide-tone' || noteClass === 'chord-tone';
}
