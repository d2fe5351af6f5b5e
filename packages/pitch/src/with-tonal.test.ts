import { Chord, ChordType, Key, Note, Progression, Scale, ScaleType } from 'tonal';
import { describe, expect, test } from 'vitest';
import {
  chordOfNumeral,
  isReedplateError,
  keySignature,
  midi,
  noteName,
  numeralOfChord,
  parseChord,
  parseKey,
  parseNoteName,
  parseNumeral,
  parseScale,
  spell,
  spellAbove,
  TONICS,
  toKey,
  transposeKey,
} from './index.js';

const coded = (code: string) => expect.objectContaining({ code });

describe('what tonal gives is taken', () => {
  test('midi and parseNoteName take what Note.get gives', () => {
    for (const name of ['C4', 'Bb3', 'F##2', 'C-1', 'G9']) {
      expect(midi(Note.get(name))).toBe(midi(name));
      expect(parseNoteName(Note.get(name)).name).toBe(Note.pitchClass(name));
    }
    expect(spellAbove(6, Note.get('D'))).toBe('F#');
  });

  test('parseChord takes what Chord.get gives for every suffix of tonal, on every usual root', () => {
    for (const root of TONICS) {
      for (const { aliases, intervals } of ChordType.all()) {
        const given = Chord.getChord(aliases[0] ?? '', root);
        const { tones, root: read } = parseChord(given);
        expect(read).toBe(root);
        expect(tones).toHaveLength(intervals.length);
        const spelled = tones.map(({ name }) => Note.chroma(name));
        expect(spelled).toEqual(given.notes.map((note) => Note.chroma(note)));
      }
    }
  });

  test('parseChord keeps the bass of a chord of tonal', () => {
    expect(parseChord(Chord.get('C/E')).symbol).toBe('C/E');
    expect(parseChord(Chord.get('G7/F')).symbol).toBe('G7/F');
    expect(parseChord(Chord.get('Am7/D')).symbol).toBe('Am7/D');
  });

  test('parseChord reads every name that Chord.detect gives for the notes of a chord', () => {
    const detected = ['G7', 'Am7', 'Cmaj9', 'F#m7b5'].flatMap((symbol) =>
      Chord.detect(Chord.get(symbol).notes),
    );
    expect(detected.length).toBeGreaterThan(3);
    for (const symbol of detected) {
      const [, ...notes] = Chord.get(symbol).notes;
      expect(parseChord(symbol).tones.map(({ name }) => name)).toEqual(
        expect.arrayContaining(notes.slice(0, 1)),
      );
    }
  });

  test('parseScale takes what Scale.get and ScaleType.get give', () => {
    for (const name of ScaleType.names()) {
      expect(parseScale(Scale.get(`C ${name}`))).toBe(parseScale(name));
      expect(parseScale(Scale.get(name))).toBe(parseScale(name));
      expect(parseScale(ScaleType.get(name))).toBe(parseScale(name));
    }
  });

  test('whatever takes a key takes what Key.majorKey and Key.minorKey give', () => {
    for (const tonic of TONICS) {
      expect(toKey(Key.majorKey(tonic))).toBe(parseKey(tonic));
      expect(toKey(Key.minorKey(tonic))).toBe(parseKey(`${tonic}m`));
    }
    expect(spell(1, Key.majorKey('A'))).toBe('C#');
    expect(noteName(61, { key: Key.majorKey('Ab') })).toBe('Db');
    expect(transposeKey(Key.minorKey('A'), 5).name).toBe('Dm');
    expect(chordOfNumeral('IV7', Key.majorKey('Ab')).symbol).toBe('Db7');
    expect(numeralOfChord(Chord.get('Db7'), Key.majorKey('Ab')).text).toBe('IV7');
  });

  test('parseNumeral and parseChord read what Progression gives', () => {
    const chords = ['C7', 'Fm', 'Bdim', 'Eb7', 'Am7', 'F#m7b5', 'Gsus4', 'Cmaj7'];
    const numerals = Progression.toRomanNumerals('C', chords);
    const back = numerals.map((text) => chordOfNumeral(text, 'C').symbol);
    expect(back).toEqual(chords);
    expect(numerals.map((text) => parseNumeral(text).text)).toContain('iv');
    const names = Progression.fromRomanNumerals('G', ['I7', 'IV7', 'V7', 'bVII7']);
    expect(names.map((name) => numeralOfChord(name, 'G').text)).toEqual([
      'I7',
      'IV7',
      'V7',
      'bVII7',
    ]);
  });

  test('keySignature is the one of tonal', () => {
    for (const tonic of TONICS) {
      expect(keySignature(tonic)).toBe(Key.majorKey(tonic).alteration);
      expect(keySignature(`${tonic}m`)).toBe(Key.minorKey(tonic).alteration);
    }
  });
});

describe('what tonal gives for a name that it does not know is an error', () => {
  test.each([
    ['note', () => midi(Note.get('H4')), 'NOTE_UNKNOWN'],
    ['note without octave', () => midi(Note.get('C')), 'NOTE_UNKNOWN'],
    ['note name', () => parseNoteName(Note.get('H')), 'NOTE_UNKNOWN'],
    ['chord', () => parseChord(Chord.get('nonsense')), 'CHORD_UNKNOWN'],
    ['chord without a root', () => parseChord(Chord.get('maj7')), 'CHORD_UNKNOWN'],
    ['scale', () => parseScale(Scale.get('nonsense')), 'SCALE_UNKNOWN'],
    ['key', () => toKey(Key.majorKey('H')), 'KEY_UNKNOWN'],
    ['key that no band names', () => toKey(Key.minorKey('B#')), 'KEY_UNKNOWN'],
  ])('an empty or unusual %s', (_, read, code) => {
    expect(read).toThrow(coded(code));
  });

  test('what only looks like tonal is an error too', () => {
    const slips: readonly unknown[] = [
      {},
      { name: 5 },
      { name: 'C4', pc: 5 },
      { symbol: 'C', aliases: [5], tonic: 'C', bass: '' },
      { symbol: 'C', aliases: [''], tonic: 5, bass: '' },
      { type: 'major', tonic: 7 },
      { type: 7, tonic: 'C' },
      { type: {}, tonic: {} },
      [],
      () => 0,
    ];
    for (const read of [midi, parseNoteName, parseChord, parseScale, toKey]) {
      for (const slip of slips) {
        try {
          expect(read(slip as never)).toBeDefined();
        } catch (error) {
          expect(isReedplateError(error)).toBe(true);
        }
      }
    }
  });
});
