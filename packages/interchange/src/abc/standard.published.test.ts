import { expect, test } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { readAbc } from './read-abc.js';

const notesOf = (body: string, head = 'M:4/4\nL:1/8\nK:C'): readonly string[] =>
  readAbc(`X:1\n${head}\n${body}\n`).flatMap(({ line }) =>
    line.notes.map(({ start, duration, pitch }) => `${start}+${duration} ${pitch}`),
  );
const pitchesOf = (body: string, head?: string): readonly number[] =>
  notesOf(body, head).map((note) => Number(note.split(' ')[1]));

/** The table of 3.1.14, from seven sharps to seven flats: major, minor, mixolydian, dorian, phrygian, lydian, locrian. */
const SIGNATURES: readonly (readonly [number, string])[] = [
  [7, 'C# A#m G#Mix D#Dor E#Phr F#Lyd B#Loc'],
  [6, 'F# D#m C#Mix G#Dor A#Phr BLyd E#Loc'],
  [5, 'B G#m F#Mix C#Dor D#Phr ELyd A#Loc'],
  [4, 'E C#m BMix F#Dor G#Phr ALyd D#Loc'],
  [3, 'A F#m EMix BDor C#Phr DLyd G#Loc'],
  [2, 'D Bm AMix EDor F#Phr GLyd C#Loc'],
  [1, 'G Em DMix ADor BPhr CLyd F#Loc'],
  [0, 'C Am GMix DDor EPhr FLyd BLoc'],
  [-1, 'F Dm CMix GDor APhr BbLyd ELoc'],
  [-2, 'Bb Gm FMix CDor DPhr EbLyd ALoc'],
  [-3, 'Eb Cm BbMix FDor GPhr AbLyd DLoc'],
  [-4, 'Ab Fm EbMix BbDor CPhr DbLyd GLoc'],
  [-5, 'Db Bbm AbMix EbDor FPhr GbLyd CLoc'],
  [-6, 'Gb Ebm DbMix AbDor BbPhr CbLyd FLoc'],
  [-7, 'Cb Abm GbMix DbDor EbPhr FbLyd BbLoc'],
];

/** C to B under so many sharps, or flats below 0. */
function scaleUnder(fifths: number): readonly number[] {
  const letters = [60, 62, 64, 65, 67, 69, 71];
  const order = fifths > 0 ? [3, 0, 4, 1, 5, 2, 6] : [6, 2, 5, 1, 4, 0, 3];
  const altered = new Set(order.slice(0, Math.abs(fifths)));
  return letters.map((pitch, at) => pitch + (altered.has(at) ? Math.sign(fifths) : 0));
}

published('abc-standard', 'the table of key signatures, 3.1.14', () => {
  test.each(
    SIGNATURES.flatMap(([fifths, keys]) => keys.split(' ').map((key) => [key, fifths] as const)),
  )('readAbc reads K:%s as a signature of %i sharps', (key, fifths) => {
    expect(pitchesOf('CDEFGAB', `M:4/4\nL:1/8\nK:${key}`)).toEqual(scaleUnder(fifths));
  });

  test.each([
    'C major',
    'A minor',
    'C ionian',
    'A aeolian',
    'G mixolydian',
    'D dorian',
    'E phrygian',
    'F lydian',
    'B locrian',
  ])('readAbc reads K:%s as no sharps or flats', (key) => {
    expect(pitchesOf('CDEFGAB', `M:4/4\nL:1/8\nK:${key}`)).toEqual(scaleUnder(0));
  });

  test.each(['F# mixolydian', 'F#Mix', 'F#MIX'])('readAbc reads K:%s alike', (key) => {
    expect(pitchesOf('CDEFGAB', `M:4/4\nL:1/8\nK:${key}`)).toEqual(scaleUnder(5));
  });
});

published('abc-standard', 'pitches, 4.1', () => {
  test('readAbc climbs the staff from G, to d’', () => {
    expect(pitchesOf("G,A,B,CDEFGABcdefgabc'd'")).toEqual([
      ...[55, 57, 59, 60, 62, 64, 65, 67, 69, 71],
      ...[72, 74, 76, 77, 79, 81, 83, 84, 86],
    ]);
  });

  test.each([
    ["C,',", 'C,'],
    ["C'", 'c'],
  ])('readAbc reads %s as %s', (one, other) => {
    expect(pitchesOf(one)).toEqual(pitchesOf(other));
  });
});

const QUARTER = 960;

published('abc-standard', 'note lengths, 4.3', () => {
  test.each([
    ['A', '1/16', 0.25],
    ['A1', '1/16', 0.25],
    ['A2', '1/16', 0.5],
    ['A3', '1/16', 0.75],
    ['A4', '1/16', 1],
    ['A6', '1/16', 1.5],
    ['A7', '1/16', 1.75],
    ['A8', '1/16', 2],
    ['A12', '1/16', 3],
    ['A14', '1/16', 3.5],
    ['A15', '1/16', 3.75],
    ['A', '1/8', 0.5],
    ['A2', '1/8', 1],
    ['A3', '1/8', 1.5],
    ['A4', '1/8', 2],
    ['A/2', '1/8', 0.25],
    ['A3/2', '1/8', 0.75],
    ['A/4', '1/8', 0.125],
    ['A/', '1/8', 0.25],
    ['A//', '1/8', 0.125],
  ])('readAbc reads %s under L:%s as %d quarters', (note, unit, quarters) => {
    expect(notesOf(note, `M:4/4\nL:${unit}\nK:C`)).toEqual([`0+${quarters * QUARTER} 69`]);
  });
});

published('abc-standard', 'broken rhythm, rests, repeats and ties, 4.4 to 4.11', () => {
  const RECOMMENDED = notesOf('a>b c<d abcd');

  test.each([
    ['a3b cd3 a2b2c2d2', '1/16'],
    ['a3/2b/2 c/2d3/2 abcd', '1/8'],
  ])('readAbc reads %s under L:%s as a>b c<d abcd', (body, unit) => {
    expect(notesOf(body, `M:4/4\nL:${unit}\nK:C`)).toEqual(RECOMMENDED);
  });

  test.each([
    ['a>>b', ['0+840 81', '840+120 83']],
    ['a>>>b', ['0+900 81', '900+60 83']],
    ['a<<b', ['0+120 81', '120+840 83']],
  ])('readAbc dots %s twice or thrice', (body, expected) => {
    expect(notesOf(body)).toEqual(expected);
  });

  test('readAbc rests four measures for Z4 as for z4 four times', () => {
    const head = 'M:2/4\nL:1/8\nK:C';
    expect(notesOf('Z4|CD EF|GA Bc', head)).toEqual(notesOf('z4|z4|z4|z4|CD EF|GA Bc', head));
  });

  test.each([':|:', ':||:'])('readAbc reads %s as ::', (bar) => {
    expect(notesOf(`|:ABcd efga${bar}gfed cBAG:|`)).toEqual(notesOf('|:ABcd efga::gfed cBAG:|'));
  });

  // 4.8: an end without a beginning goes back to the latest double bar or end of a repeated section.
  test.each([
    ['C4:|D4||E4|F4:|', 'C4|C4|D4|E4|F4|E4|F4'],
    ['C4|D4|]E4:|', 'C4|D4|E4|E4'],
  ])('readAbc plays %s as %s', (repeated, written) => {
    expect(notesOf(repeated)).toEqual(notesOf(written));
  });

  test('readAbc plays first and second endings', () => {
    const head = 'M:3/4\nL:1/8\nK:C';
    const played = pitchesOf('|:faf gfe|[1 dfe dBA:|[2 d2e dcB|]', head);
    const common = pitchesOf('faf gfe', head);
    expect(played).toEqual([
      ...common,
      ...pitchesOf('dfe dBA', head),
      ...common,
      ...pitchesOf('d2e dcB', head),
    ]);
  });

  test.each([
    ['abc-|cba', 'abc2ba'],
    ['c4-c4', 'c8'],
  ])('readAbc joins the tied notes of %s as in %s', (tied, joined) => {
    expect(notesOf(tied)).toEqual(notesOf(joined));
  });

  test.each([
    ['A2``B``C', 'A2BC'],
    ['ABC2DE', 'AB C2 DE'],
  ])('readAbc reads %s as %s', (one, other) => {
    expect(notesOf(one)).toEqual(notesOf(other));
  });
});
