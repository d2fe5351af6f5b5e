import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, test } from 'vitest';
import { readAbc } from './read-abc.js';
import { writeAbc } from './write-abc.js';

const at = (beat: number, pitch: number, beats = 1) => ({
  start: beat * 960,
  duration: beats * 960,
  pitch,
});
/** The music of a tune, without its head. */
const music = (abc: string): string => abc.split(/\nK:.*\n/u)[1] ?? '';

describe('writeAbc', () => {
  test('writeAbc groups notes by beats, four bars to a line', () => {
    const notes = Array.from({ length: 20 }, (_, beat) => at(beat, 67));
    expect(music(writeAbc({ line: makeLine([at(0, 67, 0.5), at(0.5, 69, 0.5), at(1, 71)]) }))).toBe(
      'GA B2 z4 |]\n',
    );
    expect(
      music(writeAbc({ line: makeLine(notes) }))
        .trim()
        .split('\n').length,
    ).toBe(2);
  });

  test('writeAbc writes octaves and the signs that any reader needs', () => {
    const line = makeLine([36, 48, 60, 72, 84].map((pitch, beat) => at(beat, pitch)));
    expect(music(writeAbc({ line }))).toContain("C,,2 C,2 C2 c2 | c'2");
    const naturals = makeLine([66, 78, 77, 65].map((pitch, beat) => at(beat, pitch)));
    expect(music(writeAbc({ line: naturals }))).toBe('_G2 _g2 f2 F2 |]\n');
    expect(music(writeAbc({ line: naturals, key: 'G' }))).toBe('F2 f2 =f2 =F2 |]\n');
  });

  test('writeAbc spells a note by the chord that it begins over, and holds it so over the next', () => {
    const chart = makeChart('ragtime-eight-bar', 'G');
    // Over E7 a G sharp, in G an A flat: held into A7, which has neither, it stays what it was.
    const line = makeLine([at(4, 68, 5), at(9, 61, 3), at(0, 61, 4)]);
    expect(music(writeAbc({ line, chart }))).toContain('"G"_D8 | "E7"^G8- | "A7"^G2 ^C6 | "D7"z8');
  });

  test('writeAbc writes triplets, ties and dotted notes', () => {
    const triplet = [0, 1 / 3, 2 / 3].map((beat) => at(beat, 67, 1 / 3));
    const line = makeLine([...triplet, at(1, 69, 2.5), at(3.5, 71, 1.5)]);
    expect(music(writeAbc({ line }))).toBe('(3GGG A4- AB- | B2 z6 |]\n');
  });

  test('writeAbc writes runs of triplet values that are no three alike', () => {
    const line = makeLine([at(0, 67, 2 / 3), at(2 / 3, 69, 1 / 3), at(1, 71, 3)]);
    expect(music(writeAbc({ line }))).toBe('(3:2:2G2A B6 |]\n');
  });

  test('writeAbc writes chords together, and voices that overlap behind an ampersand', () => {
    const chord = makeLine([at(0, 60, 4), at(0, 64, 4)]);
    expect(music(writeAbc({ line: chord }))).toBe('[CE]8 |]\n');
    const overlap = makeLine([at(0, 60, 4), at(1, 64, 3)]);
    expect(music(writeAbc({ line: overlap }))).toBe('C8 & z2 E6 |]\n');
  });

  test('writeAbc writes chord symbols, and cuts a note that one comes within', () => {
    const chart = makeChart('basic', 'G', { tempo: 96 });
    const abc = writeAbc({ line: makeLine([at(14, 67, 4)]), chart });
    expect(abc).toContain('R:shuffle\nM:4/4\nL:1/8\nQ:"Medium, shuffle" 1/4=96\nK:G\n"G7"z8 |');
    expect(abc).toContain('z4 G4- |\n"C7"G4 z4 |');
    const split = writeAbc({
      line: makeLine([at(0, 67, 4)]),
      chart: makeChart('eight-bar', 'C'),
    });
    expect(readAbc(split)[0]?.line.notes).toEqual([at(0, 67, 4)]);
  });

  test('writeAbc writes words as annotations under the notes', () => {
    const line = makeLine([at(0, 67), at(1, 70)]);
    expect(music(writeAbc({ line }, { words: ['-2', '-3"'] }))).toBe('"_-2"G2 "_-3″"_B2 z4 |]\n');
  });

  test('writeAbc writes a tempo in felt beats', () => {
    const line = makeLine([at(0, 67)], { metre: '12/8', tempo: 60 });
    expect(writeAbc({ line })).toContain('Q:"Slow" 3/8=60\n');
  });

  test.each([
    [2, true],
    [3, false],
  ])(
    'writeAbc writes %i choruses that are alike between repeat signs: %s',
    (choruses, isFolded) => {
      const chart = makeChart('basic', 'G', { choruses, pickup: 960 });
      const notes = Array.from({ length: choruses }, (_, at_) => at(at_ * 48 + 1, 67));
      const line = makeLine(notes, { pickup: 960 });
      const abc = music(writeAbc({ line, chart }));
      expect(abc.startsWith('z2 | |:"G7"G2')).toBe(isFolded);
      expect(abc.endsWith(' :|\n')).toBe(isFolded);
      expect(readAbc(writeAbc({ line, chart }))[0]?.line.notes).toEqual(notes);
      expect(writeAbc({ line, chart }, { repeats: false })).not.toContain('|:');
    },
  );

  test('writeAbc writes four bars a line after a pickup, and a double bar line where a chorus ends', () => {
    const chart = makeChart('basic', 'G', { choruses: 2, pickup: 960, intro: 'from-the-five' });
    const line = makeLine([at(0, 62), at(1, 67)], { pickup: 960 });
    const rows = music(writeAbc({ line, chart })).trim().split('\n');
    const bars = rows.map(
      (row) => row.split(/\|\]|\|\||\|/u).filter((bar) => bar.trim() !== '').length,
    );
    // A pickup, four bars of introduction, and two choruses of twelve.
    expect(bars).toEqual([5, 4, 4, 4, 4, 4, 4]);
    const double = rows.map((row) => row.endsWith('||'));
    expect(double).toEqual([true, false, false, true, false, false, false]);
    expect(rows.at(-1)?.endsWith('|]')).toBe(true);
  });

  test('writeAbc writes a subtitle as a line that is printed, whatever stands in it', () => {
    const line = makeLine([at(0, 67)], { title: 'Roots' });
    const abc = writeAbc({ line, key: 'G' }, { subtitle: 'C harp,\n100 % & 2nd position' });
    expect(abc).toContain('K:G\n%%center C harp, 100 \\% \\& 2nd position\n');
    const [piece] = readAbc(abc);
    expect([piece?.line.title, piece?.line.notes]).toEqual(['Roots', line.notes]);
  });

  test('writeAbc writes the feel of a chart without a tempo', () => {
    const chart = makeChart('basic', 'G');
    expect(writeAbc({ line: makeLine([]), chart })).toContain('\nQ:"Shuffle"\n');
    expect(writeAbc({ line: makeLine([at(0, 67)]) })).not.toContain('Q:');
  });

  test('writeAbc writes every part as a voice, percussion left out', () => {
    const line = makeLine([at(0, 67)]);
    const bass = { name: 'Bass', program: 33, line: makeLine([at(0, 43)]) };
    const kit = { name: 'Kit', percussion: true, line: makeLine([at(0, 35)]) } as const;
    const [piece] = readAbc(writeAbc({ line, parts: [bass, kit] }));
    expect(piece?.parts.map(({ name, line: own }) => [name, own.notes[0]?.pitch])).toEqual([
      ['', 67],
      ['Bass', 43],
    ]);
  });

  test('writeAbc numbers tunes, so that several make a file', () => {
    const line = makeLine([at(0, 67)], { title: '100% \\ A & B' });
    const book = [1, 2].map((number) => writeAbc({ line }, { number })).join('\n');
    expect(readAbc(book).map((piece) => piece.line.title)).toEqual([line.title, line.title]);
    expect(() => writeAbc({ line }, { number: 0.5 })).toThrowError(/number of a tune/u);
  });
});
