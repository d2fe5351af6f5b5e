import { type Chord, type KeyName, ReedplateError } from '@reedplate/pitch';
import type { ShownAccidental } from '../notation/accidentals.js';
import type { Beam } from '../notation/beam-notes.js';
import type { GraceNote, PlayedAs } from '../notation/measure.js';
import type { NoteValue } from '../notation/note-value.js';
import type { SpelledNote } from '../notation/spell-voice.js';
import { staffPitch } from '../notation/staff-pitch.js';
import { dynamicsOf, writeBends } from './write-playing.js';
import { element } from './xml-text.js';

/** What an event is written with. */
export interface NoteContext {
  readonly key: KeyName;
  /** Counted from 1. */
  readonly voice: number;
  readonly beams: readonly Beam[];
  /** Signs before its pitches, grace notes first. */
  readonly accidentals: readonly (ShownAccidental | undefined)[];
}

/** The `<note>` elements of a printed value: a rest, or one for each of its pitches. */
export function writeEvent(note: SpelledNote, context: NoteContext): readonly string[] {
  if (note.pitches.length === 0) return [writeNote(undefined, note, false, context, {})];
  const { accidentals } = context;
  const graces = (note.graces ?? []).flatMap((together) =>
    together.map((grace, at) => ({ grace, isInChord: at > 0, chord: note.chord })),
  );
  return [
    ...graces.map(({ grace, ...place }, at) =>
      writeGrace(grace, place, { ...context, accidentals: accidentals.slice(at, at + 1) }),
    ),
    ...note.pitches.map((pitch, at) => {
      const own = { ...context, accidentals: accidentals.slice(graces.length + at).slice(0, 1) };
      return writeNote(pitch, note, at > 0, own, note.played?.[at] ?? {});
    }),
  ];
}

/** Grace notes have no duration; an eighth is how they are drawn. */
function writeGrace(
  { pitch, played = {} }: GraceNote,
  { isInChord, chord }: { readonly isInChord: boolean; readonly chord: Chord | undefined },
  { key, voice, accidentals }: NoteContext,
): string {
  const content = [
    element('grace', '', { slash: 'yes' }),
    ...(isInChord ? [element('chord')] : []),
    writePitch(pitch, key, chord),
    element('voice', `${voice}`),
    element('type', 'eighth'),
    ...writeAccidental(accidentals),
    ...writeNotations([], [], undefined, played),
  ];
  return element('note', content, dynamicsOf(played));
}

function writeNote(
  pitch: number | undefined,
  { value, duration, tiedFrom, tiedTo, word, tuplet, chord }: SpelledNote,
  isInChord: boolean,
  { key, voice, beams, accidentals }: NoteContext,
  played: PlayedAs,
): string {
  const ties = pitch === undefined ? [] : tieTypes(tiedFrom, tiedTo);
  const shown = isInChord ? undefined : word;
  const brackets = isInChord ? [] : tupletTypes(tuplet);
  const content = [
    ...(isInChord ? [element('chord')] : []),
    pitch === undefined ? element('rest') : writePitch(pitch, key, chord),
    element('duration', `${duration}`),
    ...ties.map((type) => element('tie', '', { type })),
    element('voice', `${voice}`),
    ...writeValue(value, accidentals),
    // The first note of a chord carries its beams.
    ...(isInChord ? [] : beams.map((beam, at) => element('beam', beam, { number: at + 1 }))),
    ...writeNotations(ties, brackets, shown, played),
    ...(shown === undefined ? [] : [writeLyric(shown)]),
  ];
  return element('note', content, dynamicsOf(played));
}

/** Readers count a tuplet from the note it starts at to the one it stops at. */
function tupletTypes(tuplet: SpelledNote['tuplet']): readonly ('start' | 'stop')[] {
  if (tuplet === undefined) return [];
  const { at, size } = tuplet;
  return [
    ...(at === 0 ? (['start'] as const) : []),
    ...(at === size - 1 ? (['stop'] as const) : []),
  ];
}

function tieTypes(tiedFrom: boolean, tiedTo: boolean): readonly ('stop' | 'start')[] {
  return [...(tiedFrom ? (['stop'] as const) : []), ...(tiedTo ? (['start'] as const) : [])];
}

/** Octaves of MusicXML begin at C0. */
const LOWEST = 12;

function writePitch(pitch: number, key: KeyName, chord: Chord | undefined): string {
  if (pitch < LOWEST) {
    throw new ReedplateError({ code: 'PITCH_RANGE', value: pitch, expected: 'a note from C0 up' });
  }
  const { letter, alteration, octave } = staffPitch(pitch, key, chord);
  return element('pitch', [
    element('step', letter),
    ...(alteration === 0 ? [] : [element('alter', `${alteration}`)]),
    element('octave', `${octave}`),
  ]);
}

function writeAccidental([shown]: NoteContext['accidentals']): readonly string[] {
  if (shown === undefined) return [];
  return [element('accidental', shown.sign, shown.cautionary ? { cautionary: 'yes' } : {})];
}

/** Type, dots, sign and tuplet, in the order of the schema. */
function writeValue(
  value: NoteValue | undefined,
  accidentals: NoteContext['accidentals'],
): readonly string[] {
  if (value === undefined) return writeAccidental(accidentals);
  const { type, dots, triplet } = value;
  const inTime = [element('actual-notes', '3'), element('normal-notes', '2')];
  return [
    element('type', type),
    ...Array.from({ length: dots }, () => element('dot')),
    ...writeAccidental(accidentals),
    ...(triplet ? [element('time-modification', inTime)] : []),
  ];
}

/** Tab is shown as a lyric; for programs it stands among the technical signs too. */
function writeNotations(
  ties: readonly ('stop' | 'start')[],
  tuplets: readonly ('stop' | 'start')[],
  word: string | undefined,
  played: PlayedAs,
): readonly string[] {
  const technical = [
    ...writeBends(played),
    ...(word === undefined ? [] : [element('other-technical', word)]),
  ];
  const notations = [
    ...ties.map((type) => element('tied', '', { type })),
    ...tuplets.map((type) => element('tuplet', '', { type })),
    ...(technical.length === 0 ? [] : [element('technical', technical)]),
    ...(played.accent === true ? [element('articulations', [element('accent')])] : []),
  ];
  return notations.length === 0 ? [] : [element('notations', notations)];
}

function writeLyric(word: string): string {
  return element('lyric', [element('syllabic', 'single'), element('text', word)], { number: 1 });
}
