import {
  ChordType,
  Interval,
  Note,
  Progression,
  RomanNumeral,
  ScaleType,
  Chord as TonalChord,
} from 'tonal';
import { describe, expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import {
  centsBetween,
  chordOfNumeral,
  degreeAbove,
  frequency,
  type KeyName,
  midi,
  NOTE_NAMES,
  noteNameWithOctave,
  parseChord,
  parseNoteName,
  parseNumeral,
  parseScale,
  SCALE_DEGREES,
  scaleNames,
  spell,
  TWELVE_KEYS,
  toPitchClass,
  transposeKey,
} from './index.js';

describe('pitches', () => {
  published('iso-16', 'standard tuning frequency', () => {
    test('frequency gives A4 the standard tuning frequency, 440 Hz (ISO 16:1975)', () => {
      expect(frequency(midi('A4'))).toBe(440);
    });
  });

  published('memory', 'frequencies', () => {
    // Common tables of the equal-tempered scale, two decimals; values from memory.
    test.each([
      ['A0', 27.5],
      ['C8', 4186.01],
    ])('frequency of %s is %d Hz in the equal-tempered scale', (note, hertz) => {
      expect(frequency(midi(note))).toBeCloseTo(hertz, 2);
    });
  });

  published('midi-tuning', 'the formula of the pitch number', () => {
    test('frequency undoes d = 69 + 12 log2(f / 440) of the MIDI Tuning Standard', () => {
      for (let pitch = 0; pitch < 128; pitch += 1) {
        expect(69 + 12 * Math.log2(frequency(pitch) / 440)).toBeCloseTo(pitch, 9);
      }
    });
  });

  published('hansson-scales', 'the chord 4:5:6:7', () => {
    // The chord 4:5:6:7 of Hansson, ji_hca02.scl (2004); the cents computed from the ratios.
    test.each([
      [5, 4, 386.3],
      [3, 2, 702.0],
      [7, 4, 968.8],
    ])('centsBetween measures the just ratio %i:%i as %d cents', (upper, lower, cents) => {
      expect(centsBetween(lower, upper)).toBeCloseTo(cents, 1);
    });
  });

  published('oeis-layout', 'semitones of the layout', () => {
    // OEIS A291810 (2017): semitones of blow and draw, hole by hole, above 1 blow; the note names of
    // the layout from Wikipedia, "Richter-tuned harmonica".
    test('midi gives the natural notes of a C harp the semitones of OEIS A291810', () => {
      const offsets = [0, 2, 4, 7, 7, 11, 12, 14, 16, 17, 19, 21, 24, 23, 28, 26, 31, 29, 36, 33];
      const blow = 'C4 E4 G4 C5 E5 G5 C6 E6 G6 C7'.split(' ').map(midi);
      const draw = 'D4 G4 B4 D5 F5 A5 B5 D6 F6 A6'.split(' ').map(midi);
      expect(blow.flatMap((pitch, i) => [pitch - 60, (draw[i] ?? 0) - 60])).toEqual(offsets);
    });
  });
});

describe('tonal as an outside reference', () => {
  published('tonal', 'chords, scales and names', () => {
    test('midi agrees on every note name in every octave', () => {
      for (const name of NOTE_NAMES) {
        for (let octave = 0; octave <= 8; octave += 1) {
          expect(midi(`${name}${octave}`), name).toBe(Note.midi(`${name}${octave}`));
        }
      }
    });

    test('frequency agrees on every MIDI number', () => {
      for (let pitch = 0; pitch < 128; pitch += 1) {
        expect(frequency(pitch)).toBeCloseTo(Note.freq(noteNameWithOctave(pitch)) ?? 0, 6);
      }
    });
  });

  /** Suffixes that read as something else after a root, and what to write for the same chord. */
  const RENAMED = new Map([
    ['4', 'quartal'],
    ['b9sus', '7b9sus4'],
  ]);

  published('tonal', 'chords, scales and names', () => {
    test('parseChord knows all 106 chord types, under all their names', () => {
      expect(ChordType.all()).toHaveLength(106);
      for (const { aliases, intervals } of ChordType.all()) {
        const semitones = intervals.map((interval) => toPitchClass(Interval.semitones(interval)));
        for (const alias of aliases) {
          const { tones } = parseChord(`C${RENAMED.get(alias) ?? alias}`);
          expect(
            tones.map((tone) => tone.pitchClass),
            alias,
          ).toEqual(semitones);
        }
      }
    });

    test('parseChord spells every chord type on every usual root as tonal does', () => {
      for (const { aliases, intervals } of ChordType.all()) {
        const suffix = aliases[0] ?? '';
        for (const { tonic } of TWELVE_KEYS) {
          const expected = intervals.map((interval) => Note.transpose(tonic, interval));
          const { tones } = parseChord(`${tonic}${RENAMED.get(suffix) ?? suffix}`);
          const names = tones.map((tone) => tone.name);
          // tonal writes three flats where we give the plain name.
          const reached = expected.map((name, i) => (name.length > 3 ? names[i] : name));
          expect(names, `${tonic}${suffix}`).toEqual(reached);
        }
      }
    });

    test('parseChord numbers the degrees of every chord type by their intervals', () => {
      for (const { aliases, intervals } of ChordType.all()) {
        const suffix = aliases[0] ?? '';
        const { tones } = parseChord(`C${RENAMED.get(suffix) ?? suffix}`);
        const numbers = tones.map((tone) => Number(/\d+$/.exec(tone.degree)?.[0]));
        // Only the chord of fourths has a tenth, which we call the third it is.
        const expected = intervals.map((interval) => Number.parseInt(interval, 10));
        expect(numbers, suffix).toEqual(expected.map((number) => (number === 10 ? 3 : number)));
      }
    });

    test('parseScale knows all 92 scales, under all their names', () => {
      expect(ScaleType.all()).toHaveLength(92);
      for (const { name, aliases, intervals } of ScaleType.all()) {
        const semitones = intervals.map((interval) => toPitchClass(Interval.semitones(interval)));
        for (const known of [name, ...aliases]) {
          expect(parseScale(known), known).toEqual({ name, semitones });
        }
      }
      expect([...scaleNames()]).toEqual(ScaleType.all().map((scale) => scale.name));
    });

    // Of numerals tonal honours neither case nor secondary chords, so only capitals are compared.
    test('chordOfNumeral agrees on capital numerals in every key', () => {
      for (const { tonic, name } of TWELVE_KEYS) {
        for (const numeral of [
          'I',
          'I7',
          'IV7',
          'V7',
          'bVI7',
          'bIIImaj7',
          'IIm7',
          'VI7',
          'VIIm7b5',
        ]) {
          const [expected = ''] = Progression.fromRomanNumerals(tonic, [numeral]);
          const ours = chordOfNumeral(numeral, name).tones.map((tone) => tone.name);
          expect(ours, `${numeral} in ${name}`).toEqual(TonalChord.get(expected).notes);
        }
      }
    });

    test('parseNumeral agrees on the step and alteration of every plain numeral', () => {
      for (const letters of RomanNumeral.names()) {
        for (const sign of ['b', '', '#']) {
          const { step, alt } = RomanNumeral.get(`${sign}${letters}`);
          expect(parseNumeral(`${sign}${letters}`)).toMatchObject({
            step: Number(step) + 1,
            alteration: alt,
          });
        }
      }
    });
  });

  published('practice', 'the trade', () => {
    test('degreeAbove and spell agree on the degrees of the blues in every key', () => {
      const intervals = ['1P', '2m', '2M', '3m', '3M', '4P', '5d', '5P', '6m', '6M', '7m', '7M'];
      for (const key of TWELVE_KEYS) {
        for (const [semitones, interval] of intervals.entries()) {
          const note = Note.transpose(key.tonic, interval);
          const { pitchClass } = parseNoteName(Note.simplify(note));
          expect(degreeAbove(pitchClass, key.pitchClass)).toBe(SCALE_DEGREES[semitones]);
          // tonal writes the double sharps and flats that we leave to music theory.
          if (note.length <= 2) expect(spell(pitchClass, key)).toBe(note);
        }
      }
    });
  });
});

describe('the trade', () => {
  published('wikipedia-twelve-bar', 'the twelve-bar forms', () => {
    // The chords I, IV and V: Wikipedia, "Twelve-bar blues"; their names in each key: common practice,
    // no source.
    test.each<[KeyName, string]>([
      ['C', 'C7 F7 G7'],
      ['G', 'G7 C7 D7'],
      ['D', 'D7 G7 A7'],
      ['A', 'A7 D7 E7'],
      ['E', 'E7 A7 B7'],
      ['B', 'B7 E7 F#7'],
      ['F#', 'F#7 B7 C#7'],
      ['Db', 'Db7 Gb7 Ab7'],
      ['Ab', 'Ab7 Db7 Eb7'],
      ['Eb', 'Eb7 Ab7 Bb7'],
      ['Bb', 'Bb7 Eb7 F7'],
      ['F', 'F7 Bb7 C7'],
    ])(
      'chordOfNumeral gives the three chords of a blues in %s as a band calls them',
      (key, symbols) => {
        const chords = ['I7', 'IV7', 'V7'].map((numeral) => chordOfNumeral(numeral, key).symbol);
        expect(chords.join(' ')).toBe(symbols);
      },
    );

    // Wikipedia, "Twelve-bar blues": VI7♭9 is V of ii, the typical chord of bar 8 in the bebop form.
    test('chordOfNumeral takes V7b9/ii for VI7b9', () => {
      expect(chordOfNumeral('V7b9/ii', 'C')).toEqual(chordOfNumeral('VI7b9', 'C'));
    });
  });

  published('premier-guitar', 'names of a minor blues', () => {
    // ♭VI7 then V7 in a minor blues: magazine style guide "Essential blues progressions", p. 3; the
    // names of the chords in B minor: common practice, no source.
    test('chordOfNumeral counts the steps of a minor key from the major scale', () => {
      const chords = ['i7', 'iv7', 'bVI7', 'V7'].map((n) => chordOfNumeral(n, 'Bm').symbol);
      expect(chords).toEqual(['Bm7', 'Em7', 'G7', 'F#7']);
    });
  });

  published('positions-post', 'position numbers', () => {
    // The position rule, a fifth up for each position (letters to the harmonica list, July 1994, message 19, and March 2012).
    test('transposeKey gives the song keys of a C harp in all positions', () => {
      const keys = Array.from({ length: 12 }, (_, i) => transposeKey('C', 7 * i).name);
      expect(keys.join(' ')).toBe('C G D A E B F# Db Ab Eb Bb F');
    });
  });

  published('practice', 'the trade', () => {
    // Chord-tone shares of scales over I7, IV7 and V7: computed, no published table.
    test.each([
      ['minor blues', [3, 3, 2]],
      ['minor pentatonic', [3, 3, 2]],
      ['major pentatonic', [3, 2, 2]],
      ['mixolydian', [4, 3, 3]],
      ['chromatic', [4, 4, 4]],
    ])('parseScale(%j) shares so many notes with I7, IV7 and V7', (name, shares) => {
      const scale = new Set<number>(parseScale(name).semitones);
      const shared = ['I7', 'IV7', 'V7'].map((numeral) => {
        return chordOfNumeral(numeral, 'C').tones.filter((tone) => scale.has(tone.pitchClass))
          .length;
      });
      expect(shared).toEqual(shares);
    });
  });
});
