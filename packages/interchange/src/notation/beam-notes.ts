import type { BarFrame, SpelledNote } from './spell-voice.js';

/** What a beam does at a note, in the words of MusicXML (data type beam-value). */
export type Beam = 'begin' | 'continue' | 'end' | 'forward hook' | 'backward hook';

/** Flags of each note value that has some, which are beams where notes stand together. */
const FLAGS: ReadonlyMap<string, number> = new Map([
  ['eighth', 1],
  ['16th', 2],
  ['32nd', 3],
  ['64th', 4],
]);

/**
 * For each note of a voice its beams, from the one farthest from the note heads on: notes shorter than
 * a quarter that follow each other within a felt beat, and within one tuplet, stand under one. None for
 * rests and lone notes.
 */
export function beamNotes(
  notes: readonly SpelledNote[],
  { beatTicks, length }: BarFrame,
): readonly (readonly Beam[])[] {
  // The beats of a pickup are counted from its end.
  const lead = (beatTicks - (length % beatTicks)) % beatTicks;
  const beatOf = ({ offset }: SpelledNote): number => Math.floor((offset + lead) / beatTicks);
  const flags = notes.map(flagsOf);
  const beams: (readonly Beam[])[] = [];
  let first = 0;
  while (first < notes.length) {
    const beat = beatOf(notes[first] as SpelledNote);
    let end = first + 1;
    const goesOn = (note: SpelledNote | undefined): boolean =>
      note !== undefined && isOneTuplet(notes[end - 1], note) && beatOf(note) === beat;
    while (flags[end - 1] && flags[end] && goesOn(notes[end])) end += 1;
    beams.push(...beamsOf(flags.slice(first, end)));
    first = end;
  }
  return beams;
}

/** A beam over the edge of a tuplet would leave readers without a way to nest the two. */
function isOneTuplet(before: SpelledNote | undefined, { tuplet }: SpelledNote): boolean {
  return tuplet?.at !== 0 && (tuplet === undefined) === (before?.tuplet === undefined);
}

function flagsOf({ pitches, value }: SpelledNote): number {
  return pitches.length === 0 || value === undefined ? 0 : (FLAGS.get(value.type) ?? 0);
}

/** The beams of notes that stand together, by how many flags each has. */
function beamsOf(flags: readonly number[]): readonly (readonly Beam[])[] {
  if (flags.length < 2) return flags.map(() => []);
  return flags.map((own, at) =>
    Array.from({ length: own }, (_, level): Beam => {
      const goesBack = (flags[at - 1] ?? 0) > level;
      const goesOn = (flags[at + 1] ?? 0) > level;
      if (goesBack) return goesOn ? 'continue' : 'end';
      if (goesOn) return 'begin';
      return at === 0 ? 'forward hook' : 'backward hook';
    }),
  );
}
