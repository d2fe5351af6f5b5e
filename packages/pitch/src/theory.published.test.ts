import { expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { chordOfNumeral, midi, parseChord, parseNumeral, parseScale } from './index.js';

const tonesOf = (symbol: string): readonly number[] =>
  parseChord(symbol).tones.map(({ pitchClass }) => pitchClass);

published('open-music-theory', 'triads and seventh chords by their intervals and symbols', () => {
  test.each([
    ['major triad: M3 and P5', 'C', [0, 4, 7]],
    ['minor triad: m3 and P5', 'Cm', [0, 3, 7]],
    ['diminished triad: m3 and d5', 'Cdim', [0, 3, 6]],
    ['diminished triad, degree sign', 'C°', [0, 3, 6]],
    ['augmented triad: M3 and A5', 'Caug', [0, 4, 8]],
    ['augmented triad, plus sign', 'C+', [0, 4, 8]],
    ['major seventh: M3, P5 and M7', 'Cmaj7', [0, 4, 7, 11]],
    ['dominant seventh', 'C7', [0, 4, 7, 10]],
    ['minor seventh', 'Cm7', [0, 3, 7, 10]],
    ['diminished seventh', 'Cdim7', [0, 3, 6, 9]],
    ['diminished seventh, degree sign', 'C°7', [0, 3, 6, 9]],
    ['half-diminished seventh', 'Cø7', [0, 3, 6, 10]],
  ])('parseChord reads the %s, %s', (_, symbol, tones) => {
    expect(tonesOf(symbol)).toEqual(tones);
  });
});

/** Solfège with a movable do: semitones above the tonic. */
const SOLFEGE: ReadonlyMap<string, number> = new Map([
  ['do', 0],
  ['re', 2],
  ['me', 3],
  ['mi', 4],
  ['fa', 5],
  ['sol', 7],
  ['le', 8],
  ['la', 9],
  ['te', 10],
  ['ti', 11],
]);

/** The numeral as the book writes it, ours where it counts from the major scale or names the seventh. */
const CHORDS: readonly (readonly [string, string, string])[] = [
  ['major I', 'I', 'do mi sol'],
  ['major ii', 'ii', 're fa la'],
  ['major iii', 'iii', 'mi sol ti'],
  ['major IV', 'IV', 'fa la do'],
  ['major V', 'V', 'sol ti re'],
  ['major vi', 'vi', 'la do mi'],
  ['major vii°', 'viidim', 'ti re fa'],
  ['minor i', 'i', 'do me sol'],
  ['minor ii°', 'iidim', 're fa le'],
  ['minor III', 'bIII', 'me sol te'],
  ['minor iv', 'iv', 'fa le do'],
  ['minor VI', 'bVI', 'le do me'],
  ['minor VII', 'bVII', 'te re fa'],
  ['major I7', 'Imaj7', 'do mi sol ti'],
  ['major ii7', 'ii7', 're fa la do'],
  ['major iii7', 'iii7', 'mi sol ti re'],
  ['major IV7', 'IVmaj7', 'fa la do mi'],
  ['major V7', 'V7', 'sol ti re fa'],
  ['major vi7', 'vi7', 'la do mi sol'],
  ['major viiø7', 'viim7b5', 'ti re fa la'],
  ['minor i7', 'i7', 'do me sol te'],
  ['minor iiø7', 'iim7b5', 're fa le do'],
  ['minor III7', 'bIIImaj7', 'me sol te re'],
  ['minor iv7', 'iv7', 'fa le do me'],
  ['minor VI7', 'bVImaj7', 'le do me sol'],
  ['minor VII7', 'bVII7', 'te re fa le'],
  ['minor vii°7', 'viidim7', 'ti re fa le'],
];

published('open-music-theory', 'the chords of the major and the minor keys', () => {
  test.each(CHORDS)('chordOfNumeral gives %s (%s) as %s', (_, numeral, printed) => {
    const tones = chordOfNumeral(numeral, 'C').tones.map(({ pitchClass }) => pitchClass);
    expect(tones).toEqual(printed.split(' ').map((syllable) => SOLFEGE.get(syllable)));
  });
});

const steps = (name: string): string => {
  const { semitones } = parseScale(name);
  return [...semitones.slice(1), 12]
    .map((above, at) => above - (semitones[at] ?? 0))
    .map((step) => (step === 1 ? 'H' : step === 2 ? 'W' : `${step}`))
    .join('');
};

published('open-music-theory', 'steps of scales, an interval in semitones', () => {
  test.each([
    ['major', 'WWHWWWH'],
    ['natural minor', 'WHWWHWW'],
  ])('parseScale gives %s by the steps %s', (name, printed) => {
    expect(steps(name === 'natural minor' ? 'aeolian' : name)).toBe(printed);
  });

  test('midi puts E4 four semitones above C4', () => {
    expect(midi('E4') - midi('C4')).toBe(4);
  });
});

published('aebersold', 'scales by half and whole steps', () => {
  test.each([
    ['major', 'WWHWWWH'],
    ['mixolydian', 'WWHWWHW'],
    ['dorian', 'WHWWWHW'],
    ['lydian', 'WWWHWWH'],
    ['locrian', 'HWWHWWW'],
    ['locrian #2', 'WHWHWWW'],
    ['lydian dominant', 'WWWHWHW'],
    ['diminished', 'WHWHWHWH'],
  ])('parseScale gives %s by the steps %s', (name, printed) => {
    expect(steps(name)).toBe(printed);
  });
});

published('aebersold', 'which scale a chord symbol stands for', () => {
  test.each(
    [
      ['major', 'C Cmaj Cmaj7 CM CM7 Cmaj9 Cmaj13'],
      ['mixolydian', 'C7 C9 C11 C13'],
      ['dorian', 'Cm7 Cm9 Cm11 Cm13'],
      ['locrian', 'Cm7b5'],
      ['diminished', 'Cdim Cdim7'],
      ['lydian dominant', 'C7#11 C9#11 C13#11'],
    ].flatMap(([scale = '', symbols = '']) =>
      symbols.split(' ').map((symbol) => [symbol, scale] as const),
    ),
  )('parseChord gives %s tones of the %s scale', (symbol, scale) => {
    const within = new Set<number>(parseScale(scale).semitones);
    expect(tonesOf(symbol).filter((tone) => !within.has(tone))).toEqual([]);
  });
});

/** Semitones of a degree as the table writes it. */
const semitonesOf = (degree: string): number => {
  const alteration = (degree.match(/#/gu)?.length ?? 0) - (degree.match(/b/gu)?.length ?? 0);
  const step = (Number(degree.replace(/[#b]/gu, '')) - 1) % 7;
  return ([0, 2, 4, 5, 7, 9, 11][step] ?? 0) + alteration;
};

published('harte', 'degrees of chords by shorthand', () => {
  test.each([
    ['augmaj7', 'Cmaj7#5', '1 3 #5 7'],
    ['aug7', 'C7#5', '1 3 #5 b7'],
    ['dom7dim5', 'C7b5', '1 3 b5 b7'],
    ['aug9', 'C9#5', '1 3 #5 b7 9'],
    ['augmaj9', 'Cmaj9#5', '1 3 #5 7 9'],
    ['min11', 'Cm11', '1 b3 5 b7 9 11'],
    ['sus2', 'Csus2', '1 2 5'],
    ['7sus4', 'C7sus4', '1 4 5 b7'],
    ['power', 'C5', '1 5'],
  ])('parseChord gives %s, our %s, the degrees %s', (_, symbol, degrees) => {
    expect(tonesOf(symbol)).toEqual(degrees.split(' ').map((degree) => semitonesOf(degree) % 12));
  });
});

published('wikipedia-ragtime', 'the cycle as secondary dominants', () => {
  test.each([
    ['V7/V/V', 'VI7'],
    ['V7/V', 'II7'],
  ])('parseNumeral puts %s where %s is', (secondary, plain) => {
    const chain = secondary === 'V7/V/V' ? 'V7/ii' : 'V7/V';
    expect(parseNumeral(chain).semitones).toBe(parseNumeral(plain).semitones);
  });
});
