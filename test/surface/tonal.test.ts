import * as r from 'reedplate';
import { describe, expect, test } from 'vitest';
import {
  Chord,
  Key,
  Note,
  Progression,
  Scale,
} from '../../packages/pitch/node_modules/tonal/dist/index.mjs';

const key = Key.majorKey('G');
const minor = Key.minorKey('A');
const chord = Chord.get('G7');
const scale = Scale.get('G minor blues');
const names = Progression.fromRomanNumerals('G', ['I7', 'IV7', 'I7', 'V7']);
const numerals = Progression.toRomanNumerals('G', ['G7', 'C7', 'D7']);
const line = r.makeLine([{ start: 0, duration: 960, pitch: 67 }], { tempo: 120 });
const harp = r.makeHarp('C');
const [phrase] = r.findPhrases() as [r.Phrase];
const available = r.chordAvailability('G7', harp);

/** What tonal gives, put where a name of ours stands: both calls must answer alike. */
const PAIRS: readonly (readonly [name: string, tonal: () => unknown, ours: () => unknown])[] = [
  ['makeChart, a key', () => r.makeChart('basic', key), () => r.makeChart('basic', 'G')],
  ['makeChart, a minor key', () => r.makeChart('minor', minor), () => r.makeChart('minor', 'Am')],
  [
    'pickHarps',
    () => r.pickHarps(key, { scale }),
    () => r.pickHarps('G', { scale: 'minor blues' }),
  ],
  [
    'pickHarps, numerals',
    () => r.pickHarps(key, { numerals }),
    () => r.pickHarps('G', { numerals: ['I7', 'IV7', 'V7'] }),
  ],
  [
    'pickForKeys',
    () => r.pickForKeys([{ key, length: 8 }]),
    () => r.pickForKeys([{ key: 'G', length: 8 }]),
  ],
  [
    'planSetList',
    () => r.planSetList([{ title: 'One', key }]),
    () => r.planSetList([{ title: 'One', key: 'G' }]),
  ],
  ['positionOf', () => r.positionOf('C', key), () => r.positionOf('C', 'G')],
  ['harpKeyOf', () => r.harpKeyOf(key, 2), () => r.harpKeyOf('G', 2)],
  ['enharmonicKeys', () => r.enharmonicKeys(Key.majorKey('C#')), () => r.enharmonicKeys('C#')],
  ['scaleMap', () => r.scaleMap(harp, key, scale), () => r.scaleMap(harp, 'G', 'minor blues')],
  ['scaleRun', () => r.scaleRun(harp, key, scale), () => r.scaleRun(harp, 'G', 'minor blues')],
  ['harpMap', () => r.harpMap(harp, { key }), () => r.harpMap(harp, { key: 'G' })],
  [
    'harpRows',
    () => r.harpRows(harp, { key, chord }),
    () => r.harpRows(harp, { key: 'G', chord: 'G7' }),
  ],
  ['targetsOf', () => r.targetsOf(chord, harp), () => r.targetsOf('G7', harp)],
  [
    'chordAvailability',
    () => r.chordAvailability(chord, harp),
    () => r.chordAvailability('G7', harp),
  ],
  ['chordShapes', () => r.chordShapes(chord, harp), () => r.chordShapes('G7', harp)],
  [
    'describeWarning',
    () =>
      available.warnings.map((warning) => r.describeWarning(warning, { chord: chord as never })),
    () =>
      available.warnings.map((warning) =>
        r.describeWarning(warning, { chord: r.parseChord('G7') }),
      ),
  ],
  ['styleOfKey', () => r.styleOfKey(minor), () => r.styleOfKey('Am')],
  [
    'parseForm, chord names',
    () => r.parseForm(names, { key }),
    () => r.parseForm('G7 | C7 | G7 | D7', { key: 'G' }),
  ],
  [
    'recogniseForm',
    () => r.recogniseForm(names, { key }),
    () => r.recogniseForm('G7 | C7 | G7 | D7', { key: 'G' }),
  ],
  ['keySignature', () => r.keySignature(key), () => r.keySignature('G')],
  ['transposeKey', () => r.transposeKey(key, 2), () => r.transposeKey('G', 2)],
  ['chordOfNumeral', () => r.chordOfNumeral('IV7', key), () => r.chordOfNumeral('IV7', 'G')],
  ['numeralOfChord', () => r.numeralOfChord(chord, key), () => r.numeralOfChord('G7', 'G')],
  ['parseChord', () => r.parseChord(chord), () => r.parseChord('G7')],
  ['parseScale', () => r.parseScale(scale), () => r.parseScale('minor blues')],
  ['midi', () => r.midi(Note.get('C4')), () => r.midi('C4')],
  ['noteName', () => r.noteName(61, { key }), () => r.noteName(61, { key: 'G' })],
  [
    'noteNameWithOctave',
    () => r.noteNameWithOctave(61, { key }),
    () => r.noteNameWithOctave(61, { key: 'G' }),
  ],
  [
    'writeMusicXml',
    () => r.writeMusicXml({ line, key: key as never }),
    () => r.writeMusicXml({ line, key: 'G' }),
  ],
  ['writeAbc', () => r.writeAbc({ line, key: key as never }), () => r.writeAbc({ line, key: 'G' })],
  [
    'writeMidi',
    () => r.writeMidi({ line, key: key as never }),
    () => r.writeMidi({ line, key: 'G' }),
  ],
  ['learnMelody', () => r.learnMelody([{ line, key }]), () => r.learnMelody([{ line, key: 'G' }])],
  ['keyChords', () => r.keyChords(key, harp), () => r.keyChords('G', harp)],
  [
    'makeLesson',
    () => r.makeLesson({ form: 'basic', key }),
    () => r.makeLesson({ form: 'basic', key: 'G' }),
  ],
  ['phraseChart', () => r.phraseChart(phrase, key), () => r.phraseChart(phrase, 'G')],
  [
    'harpPicture',
    () => r.harpPicture(harp, { key, chord }),
    () => r.harpPicture(harp, { key: 'G', chord: 'G7' }),
  ],
  ['positionPicture', () => r.positionPicture(key), () => r.positionPicture('G')],
];

describe('what tonal gives, in place of a name', () => {
  test.each(PAIRS)('is taken by %s', (_, tonal, ours) => {
    expect(tonal()).toEqual(ours());
  });
});
