import { expectTypeOf } from 'vitest';
import {
  type Chord,
  type ChordDegree,
  chordOfNumeral,
  degreeAbove,
  type ErrorCode,
  type ErrorPlace,
  frequency,
  isReedplateError,
  type Key,
  type KeyName,
  type Mode,
  midi,
  type NoteName,
  type NoteNameWithOctave,
  type Numeral,
  noteName,
  noteNameWithOctave,
  numeralOfChord,
  type PitchClass,
  parseChord,
  parseKey,
  parseNumeral,
  ReedplateError,
  requireOneOf,
  type Scale,
  type ScaleDegree,
  spell,
  type Tonic,
  toKey,
  transposeKey,
} from './index.js';

// What functions give is as narrow as it is known to be.
expectTypeOf(midi('C4')).toEqualTypeOf<number>();
expectTypeOf(noteName(60)).toEqualTypeOf<NoteName>();
expectTypeOf(noteNameWithOctave(60)).toEqualTypeOf<NoteNameWithOctave>();
expectTypeOf(spell(0, 'Bb')).toEqualTypeOf<NoteName>();
expectTypeOf(parseKey('G')).toEqualTypeOf<Key>();
expectTypeOf(toKey('G')).toEqualTypeOf<Key>();
expectTypeOf(transposeKey('G', 5).name).toEqualTypeOf<KeyName>();
expectTypeOf(degreeAbove(0, 7)).toEqualTypeOf<ScaleDegree>();
expectTypeOf(chordOfNumeral('I7', 'G')).toEqualTypeOf<Chord>();
expectTypeOf(numeralOfChord('G7', 'G')).toEqualTypeOf<Numeral>();
expectTypeOf(requireOneOf('blow', ['blow', 'draw'], { what: 'x' })).toEqualTypeOf<
  'blow' | 'draw'
>();

// Names are literal unions, so that an editor completes them.
expectTypeOf<'Bb'>().toExtend<NoteName>();
expectTypeOf<'Bb3'>().toExtend<NoteNameWithOctave>();
expectTypeOf<'F#m'>().toExtend<KeyName>();
expectTypeOf<Mode>().toEqualTypeOf<'major' | 'minor'>();
expectTypeOf<'b7'>().toExtend<ScaleDegree & ChordDegree>();
expectTypeOf<'NOTE_UNKNOWN'>().toExtend<ErrorCode>();
expectTypeOf<'Fb'>().not.toExtend<Tonic>();

// Errors narrow.
const caught: unknown = undefined;
if (isReedplateError(caught)) {
  expectTypeOf(caught).toEqualTypeOf<ReedplateError>();
  expectTypeOf(caught.code).toEqualTypeOf<ErrorCode>();
  expectTypeOf(caught.where).toEqualTypeOf<ErrorPlace>();
}

// Misuse does not compile.
const key = parseKey('G');
const chord = parseChord('G7');
const scale: Scale = { name: 'own', semitones: [0, 3, 5] };
// @ts-expect-error a MIDI number is not the name of a note
midi(60);
// @ts-expect-error the name of a note is not a MIDI number
noteName('C4');
// @ts-expect-error H is no key
toKey('H');
// @ts-expect-error a key in free text is parsed first
transposeKey('G minor', 5);
// @ts-expect-error there is no such spelling
transposeKey('G', 5, { spelling: 'sharp' });
// @ts-expect-error a spelling option is named key, not in
noteName(60, { in: 'G' });
// @ts-expect-error there are twelve pitch classes
spell(12);
// @ts-expect-error a frequency option is a number
frequency(69, { a4: '440' });
// @ts-expect-error a chord is no numeral
chordOfNumeral(chord, 'G');
// @ts-expect-error a numeral is no chord
numeralOfChord(parseNumeral('I7'), 'G');
// @ts-expect-error a key is read only
key.tonic = 'C';
// @ts-expect-error the tones of a chord are read only
chord.tones.push({ degree: '9', pitchClass: 9, name: 'A' });
// @ts-expect-error a tone is read only
(chord.tones[0] as Chord['tones'][number]).name = 'A';
// @ts-expect-error the semitones of a scale are pitch classes
scale satisfies { semitones: readonly (0 | 3)[] };
// @ts-expect-error a pitch class is an integer from 0 to 11
13 satisfies PitchClass;
// @ts-expect-error a code is one of the published ones
new ReedplateError({ code: 'WRONG', value: 1, expected: 'x' });
// @ts-expect-error an error says what was expected
new ReedplateError({ code: 'NOTE_UNKNOWN', value: 1 });
