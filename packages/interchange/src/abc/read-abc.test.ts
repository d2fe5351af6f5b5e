import { describe, expect, test, vi } from 'vitest';
import type { Piece } from '../piece.js';
import { readAbc } from './read-abc.js';

// A busy machine takes its time over tunes of thousands of bars.
vi.setConfig({ testTimeout: 60_000 });

/** The one tune of a body of music in G, 4/4, with quarter notes as the unit. */
function read(body: string, head = 'M:4/4\nL:1/4\nK:C', options = {}): Piece {
  const [piece] = readAbc(`X:1\n${head}\n${body}\n`, options);
  if (piece === undefined) throw new Error('no tune');
  return piece;
}

/** `start+duration pitch` of each note. */
const notes = ({ line }: Piece): readonly string[] =>
  line.notes.map(({ start, duration, pitch }) => `${start}+${duration} ${pitch}`);
const pitches = ({ line }: Piece): readonly number[] => line.notes.map(({ pitch }) => pitch);
const durations = ({ line }: Piece): readonly number[] =>
  line.notes.map(({ duration }) => duration);
const codes = ({ warnings }: Piece): readonly string[] => warnings.map(({ code }) => code);

describe('readAbc, notes and lengths', () => {
  test('readAbc reads octaves, accidentals and lengths', () => {
    expect(notes(read("C, C c c' | ^F2 _B =B/2"))).toEqual([
      '0+960 48',
      '960+960 60',
      '1920+960 72',
      '2880+960 84',
      '3840+1920 66',
      '5760+960 70',
      '6720+480 71',
    ]);
  });

  test('readAbc reads every way to write a length', () => {
    expect(durations(read('A2 A/ A// A/2 A3/2 A/4 A3/'))).toEqual([
      1920, 480, 240, 480, 1440, 240, 1440,
    ]);
  });

  test.each([
    ['M:4/4', 480],
    ['M:3/4', 480],
    ['M:2/4', 240],
    ['M:6/8', 480],
    ['M:C|', 480],
    ['M:none', 480],
  ])('readAbc without a unit in %j takes %i ticks', (metre, ticks) => {
    // ABC 2.1, L: field: a sixteenth where the metre is below 0.75 (from memory).
    expect(durations(read('A', `${metre}\nK:C`))).toEqual([ticks]);
  });

  test('readAbc reads tuplets by the metre they stand in', () => {
    expect(durations(read('(3ABc (2AB (5ABcde'))).toEqual([
      640, 640, 640, 1440, 1440, 384, 384, 384, 384, 384,
    ]);
    expect(durations(read('(5ABcde', 'M:6/8\nL:1/8\nK:C'))).toEqual([288, 288, 288, 288, 288]);
    expect(durations(read('(3:2:4AABc d'))).toEqual([640, 640, 640, 640, 960]);
    expect(durations(read('(7ABcdefg A')).reduce((sum, ticks) => sum + ticks)).toBe(2880);
  });

  test('readAbc reads broken rhythm', () => {
    expect(durations(read('A>B c<d e>>f A3<B'))).toEqual([
      1440, 480, 480, 1440, 1680, 240, 1440, 1440,
    ]);
  });

  test('readAbc reads chords, with lengths inside and outside', () => {
    expect(notes(read('[CEG]2 [C2E2] [CE]/'))).toEqual([
      '0+1920 60',
      '0+1920 64',
      '0+1920 67',
      '1920+1920 60',
      '1920+1920 64',
      '3840+480 60',
      '3840+480 64',
    ]);
  });

  test('readAbc counts rests, and rests of whole bars', () => {
    expect(notes(read('z A x A | Z2 | A'))).toEqual(['960+960 69', '2880+960 69', '11520+960 69']);
  });

  test('readAbc lays voices over each other in a bar', () => {
    expect(notes(read('C2 D2 & G4 | E'))).toEqual([
      '0+1920 60',
      '0+3840 67',
      '1920+1920 62',
      '3840+960 64',
    ]);
  });
});

describe('readAbc, accidentals', () => {
  // ABC 2.1 section 11.3, propagate-accidentals: the default is pitch (from memory).
  test('readAbc holds an accidental in every octave until the bar line', () => {
    expect(pitches(read('^F F f | F'))).toEqual([66, 66, 78, 65]);
  });

  test('readAbc holds an accidental in its octave, or not at all, where the tune says so', () => {
    const reach = (how: string) => `M:4/4\nL:1/4\nI:propagate-accidentals ${how}\nK:C`;
    expect(pitches(read('^F F f | F', reach('octave')))).toEqual([66, 66, 77, 65]);
    expect(pitches(read('^F F f | F', reach('not')))).toEqual([66, 65, 77, 65]);
    const [piece] = readAbc('X:1\n%%propagate-accidentals not\nM:4/4\nK:C\n^F F |');
    expect(piece && pitches(piece)).toEqual([66, 65]);
  });

  test('readAbc takes the option before the default, and the tune before the option', () => {
    const octave = { accidentals: 'octave' };
    expect(pitches(read('^F f', undefined, octave))).toEqual([66, 77]);
    const head = 'M:4/4\nI:propagate-accidentals pitch\nK:C';
    expect(pitches(read('^F f', head, octave))).toEqual([66, 78]);
  });

  test('readAbc holds an accidental through a tie over the bar line, and no further', () => {
    const tied = read('^F2 ^F2- | F2 F2');
    expect(notes(tied)).toEqual(['0+1920 66', '1920+3840 66', '5760+1920 65']);
  });

  test.each([
    ['G', [67, 66]],
    ['Em', [67, 66]],
    ['E minor', [67, 66]],
    ['Ador', [67, 66]],
    ['D Mixolydian', [67, 66]],
    ['Bphr', [67, 66]],
    ['F#loc', [67, 66]],
    ['Clyd', [67, 66]],
    ['F', [67, 65]],
    ['C#', [68, 66]],
    ['none', [67, 65]],
    ['HP', [67, 65]],
    ['Hp', [67, 66]],
    ['D =f', [67, 65]],
    ['C exp ^g', [68, 65]],
    ['bass', [67, 65]],
    ['G clef=treble-8', [55, 54]],
    ['G octave=1', [79, 78]],
    ['G transpose=-2', [65, 64]],
  ])('readAbc reads the signature of K:%s', (key, expected) => {
    expect(pitches(read('G F', `M:4/4\nK:${key}`))).toEqual(expected);
  });

  test.each([
    ['G', 'G'],
    ['Em', 'Em'],
    ['Ador', 'Am'],
    ['D Mixolydian', 'D'],
    ['none', undefined],
  ])('readAbc of K:%s has the key %s', (key, name) => {
    expect(read('G', `M:4/4\nK:${key}`).key).toBe(name);
  });
});

describe('readAbc, ties', () => {
  test('readAbc joins tied notes, chords too', () => {
    expect(notes(read('[CE]2-[CE]2 | G4- | G4'))).toEqual([
      '0+3840 60',
      '0+3840 64',
      '3840+7680 67',
    ]);
  });

  test('readAbc ties a note into both endings', () => {
    expect(notes(read('|: G4- |1 G2 A2 :|2 G4 |]'))).toEqual([
      '0+5760 67',
      '5760+1920 69',
      '7680+7680 67',
    ]);
  });

  test('readAbc warns of a tie to another pitch and keeps both notes', () => {
    const piece = read('A2- B2');
    expect(notes(piece)).toEqual(['0+1920 69', '1920+1920 71']);
    expect(codes(piece)).toContain('tie-open');
  });
});

describe('readAbc, repeats', () => {
  const letters = (body: string, options = {}): string =>
    pitches(read(body, 'M:1/4\nL:1/4\nK:C', options))
      .map((pitch) => 'C D EF G A B'.charAt(pitch - 60))
      .join('');

  test.each([
    ['C | D :|', 'CDCD'],
    ['C |: D | E :| F', 'CDEDEF'],
    ['|: C :: D :|', 'CCDD'],
    ['|: C :||: D :|', 'CCDD'],
    ['|:: C ::|', 'CCC'],
    ['|: C |1 D :|2 E ||', 'CDCE'],
    ['|: C | [1 D :| [2 E | F |]', 'CDCEF'],
    ['|: C |1,2 D :|3 E || F', 'CDCDCEF'],
    ['|: C |1-2 D :|3 E || F', 'CDCDCEF'],
    ['|: C |1 D :|2 E :|3 F || G', 'CDCECFG'],
    ['|: C |1 D :|2 E || F | G :|', 'CDCEFGFG'],
    ['|: C |1 D :|2 E || F |1 G :|2 A ||', 'CDCEFGFA'],
    ['| C | D ||', 'CD'],
    ['C | D |] E', 'CDE'],
    ['C|D:|E||F|G:|', 'CDCDEFGFG'],
    ['P:A\nC|D||\nP:B\nE|F:|', 'CDEFEF'],
    ['C | D |] E | F :|', 'CDEFEF'],
    ['C | D [| E | F :|', 'CDEFEF'],
    ['|: C || D :|', 'CDCD'],
  ])('readAbc plays %j as %s', (body, expected) => {
    expect(letters(body)).toBe(expected);
  });

  test('readAbc reads each bar once where asked', () => {
    expect(letters('|: C |1 D :|2 E || F', { repeats: false })).toBe('CDEF');
  });

  test('readAbc takes the pickup of a repeat with it and keeps to the grid', () => {
    const piece = read('A | BBBB | BBB :|');
    expect(piece.line.pickup).toBe(960);
    expect(piece.line.notes.length).toBe(16);
    expect(piece.warnings).toEqual([]);
  });

  test('readAbc warns once where bars leave the grid, with the place', () => {
    const piece = read('BBBB | BBB | BBBBB | BBBB |');
    expect(piece.warnings).toMatchObject([
      { code: 'bars-off-grid', count: 2, where: { line: 5, column: 12 } },
    ]);
  });
});

describe('readAbc, orders of parts', () => {
  const played = (order: string, body: string): string =>
    pitches(read(body, `M:1/4\nL:1/4\nP:${order}\nK:C`))
      .map((pitch) => 'C D EF G A B'.charAt(pitch - 60))
      .join('');

  test.each([
    ['ABA', 'P:A\nC|D||\nP:B\nE|F|]', 'CDEFCD'],
    ['A2B', 'P:A\nC|D||\nP:B\nE|F|]', 'CDCDEF'],
    ['AB', 'P:A\nC|D||\nP:B\nE|F:|', 'CDEFEF'],
    ['(AB)2', 'P:A\nC|D:|\nP:B\nE|]', 'CDCDECDCDE'],
    ['A.B A', 'P:A\nC|[P:B]D|]', 'CDC'],
  ])('readAbc with P:%s in the head plays %j as %s', (order, body, expected) => {
    expect(played(order, body)).toBe(expected);
  });
});

describe('readAbc, signs within chords', () => {
  test.each([
    ['[C~E]', [60, 64], [['ornaments', '~']]],
    ['[!trill!CE]', [60, 64], [['ornaments', '!trill!']]],
    ['[+trill+CE]', [60, 64], [['ornaments', '+trill+']]],
    ['[CzE]', [60, 64], [['symbol-unknown', 'z']]],
    ['[C$E]', [60, 64], [['symbol-unknown', '$']]],
    ['[C{d}E]', [60, 64], [['symbol-unknown', '{d}']]],
    ['[(CE)]', [60, 64], []],
    ['["C"C E-][CE]', [60, 64, 60], []],
  ])('readAbc of %s plays its notes and says what it left out', (body, expected, warned) => {
    const piece = read(body);
    expect(pitches(piece)).toEqual(expected);
    expect(piece.warnings.map(({ code, value }) => [code, value])).toEqual(warned);
  });

  test('readAbc hears an accent within a chord, and names the place of what it leaves out', () => {
    expect(read('[!accent!CE]').line.notes.map(({ accent }) => accent)).toEqual([true, true]);
    expect(read('c [C~E]').warnings[0]?.where).toEqual({ line: 5, column: 5 });
  });
});

describe('readAbc, heads', () => {
  test('readAbc reads title, metre, key and tempo in felt beats', () => {
    const { line, key } = read('CDE', "T:Caf\\'e \\& blues\nT:other\nM:6/8\nL:1/8\nQ:3/8=90\nK:Gm");
    expect(line).toMatchObject({ title: 'Café & blues', metre: '6/8', tempo: 90 });
    expect(key).toBe('Gm');
    expect(read('C', 'M:6/8\nQ:1/4=90\nK:C').line.tempo).toBe(60);
    expect(read('C', 'M:4/4\nL:1/8\nQ:"fast" 1/4=120 "ish"\nK:C').line.tempo).toBe(120);
    expect(read('C', 'M:4/4\nL:1/8\nQ:240\nK:C').line.tempo).toBe(120);
  });

  test('readAbc takes the metre in force at the first note, and warns of later ones', () => {
    expect(read('[M:6/8] CDE FGA', 'M:4/4\nK:C')).toMatchObject({
      line: { metre: '6/8' },
      warnings: [],
    });
    const changed = read('C4 |\nM:3/4\nC3 |');
    expect(changed.line.metre).toBe('4/4');
    expect(codes(changed)).toEqual(['metre-change']);
  });

  test('readAbc changes key, unit and accidentals within the tune', () => {
    expect(pitches(read('F [K:G] F | [K:F] B [K:C] B'))).toEqual([65, 66, 70, 71]);
    expect(durations(read('A [L:1/8] A\nL:1/16\nA'))).toEqual([960, 480, 240]);
  });

  test.each([
    ['M:(2+3)/8', '5/8', []],
    ['M:none', '4/4', []],
    ['M:7/32', '4/4', ['field-unknown', 'metre-missing']],
    ['M:x', '4/4', ['field-unknown', 'metre-missing']],
  ])('readAbc of %s counts in %s', (field, metre, expected) => {
    const piece = read('A', `${field}\nL:1/8\nK:C`);
    expect([piece.line.metre, codes(piece)]).toEqual([metre, expected]);
  });

  test('readAbc says that key or metre are missing', () => {
    const [piece] = readAbc('X:1\nT:bare\nCDEF\n');
    expect(piece && codes(piece)).toEqual(['key-missing', 'metre-missing']);
    expect(piece && pitches(piece)).toEqual([60, 62, 64, 65]);
  });
});

describe('readAbc, chord symbols', () => {
  const spans = ({ chart }: Piece): readonly string[] =>
    (chart?.spans ?? []).map(({ bar, beat, numeral }) => `${bar}:${beat} ${numeral}`);

  test('readAbc makes a chart of chord symbols, bar by bar', () => {
    const piece = read('"C7"C2 "F7"F2 | C4 | "N.C."C4 |"G7/b" G2');
    expect(spans(piece)).toEqual(['1:1 I7', '1:3 IV7', '2:1 IV7', '3:1 null', '4:1 V7']);
    expect(piece.chart).toMatchObject({ key: 'C', bars: 4, choruses: 1, pickup: 0 });
    expect(piece.chart?.spans.at(-1)).toMatchObject({ start: 11520, end: 15360 });
  });

  test('readAbc begins a chart without a chord where none stands, and skips the pickup', () => {
    expect(spans(read('G | C2 "C"C2 | "F"F4 |'))).toEqual(['1:1 null', '1:3 I', '2:1 IV']);
    expect(spans(read('"G7"G | C4 | "C"C3 |'))).toEqual(['1:1 V7', '2:1 I']);
  });

  test('readAbc takes annotations for no chords, and keeps the first of two', () => {
    const piece = read('"^loud""C"C2 "_-2""F""Dm"F2 | "what"G4 |');
    expect(spans(piece)).toEqual(['1:1 I', '1:3 IV', '2:1 IV']);
    expect(piece.warnings).toMatchObject([
      { code: 'chord-alternative', value: 'Dm' },
      { code: 'chord-unknown', value: 'what' },
    ]);
  });

  test('readAbc of a tune without chord symbols has no chart', () => {
    expect(read('CDEF').chart).toBeUndefined();
  });
});

describe('readAbc, what is left out', () => {
  test.each([
    ['{~}c', [72], 'grace-notes'],
    ['!trill!c', [72], 'ornaments'],
    ['Tc', [72], 'ornaments'],
    ['c ? d', [72, 74], 'symbol-unknown'],
    ["c''''''''' c", [72], 'pitch-range'],
    ['c\nw: words', [72], 'words'],
    ['c [K:H] d', [72, 74], 'field-unknown'],
  ])('readAbc of %j plays %j and warns of %s', (body, expected, code) => {
    const piece = read(body);
    expect(pitches(piece)).toEqual(expected);
    expect(codes(piece)).toEqual([code]);
  });

  test('readAbc passes over slurs, spacers, comments and line ends without a word', () => {
    const piece = read('(c d) y e`f % remark\n| \\\ng !\na$'.replace('$', ''));
    expect(pitches(piece)).toEqual([72, 74, 76, 77, 79, 81]);
    expect(piece.warnings.map(({ code }) => code)).toEqual([]);
  });
});

describe('readAbc, voices and books', () => {
  test('readAbc keeps voices apart, the first being the line', () => {
    const piece = read('V:1 name="Harp"\nC D\n[V:2] C, D,\nV:1\nE F', 'M:4/4\nL:1/4\nK:C');
    expect(piece.parts.map(({ name, line }) => [name, line.notes.map((n) => n.pitch)])).toEqual([
      ['Harp', [60, 62, 64, 65]],
      ['', [48, 50]],
    ]);
    expect(piece.line).toEqual(piece.parts[0]?.line);
  });

  test('readAbc reads every tune of a book, with the fields before the first for all', () => {
    const book =
      'M:3/4\n\nX:1\nK:C\nC\n\nsome text: for people\n\nX:2\nM:4/4\nK:C\nD\nX:3\nK:C\nE\n';
    const pieces = readAbc(book);
    expect(pieces.map(({ line }) => [line.metre, line.notes[0]?.pitch])).toEqual([
      ['3/4', 60],
      ['4/4', 62],
      ['3/4', 64],
    ]);
  });

  test('readAbc reads bytes in UTF-8, UTF-16 and Latin 1', () => {
    const text = 'X:1\nT:é\nM:4/4\nK:C\nC\n';
    const utf16 = new Uint8Array(Buffer.from(`\uFEFF${text}`, 'utf16le'));
    const latin = new Uint8Array(Buffer.from(text, 'latin1'));
    for (const bytes of [new TextEncoder().encode(text), utf16, utf16.map(swap(utf16)), latin]) {
      expect(readAbc(bytes)[0]?.line.title).toBe('é');
    }
  });

  test.each(['', 'plain text', 'T:no number\nabc'])('readAbc refuses %j', (text) => {
    expect(() => readAbc(text)).toThrowError(
      expect.objectContaining({ code: 'ABC_SYNTAX', where: { line: 1 } }),
    );
  });
});

describe('readAbc, bounds', () => {
  test('readAbc takes a bar of a hundred thousand signs to jump by in its stride', () => {
    const [piece] = readAbc(`X:1\nM:4/4\nL:1/4\nK:C\n${'!coda!'.repeat(100_000)}C4 !D.C.!|]`);
    expect(piece?.line.notes.length).toBe(2);
  });

  test('readAbc refuses tunes that would grow beyond measure', () => {
    const rests = `X:1\nM:4/4\nK:C\n${'Z999|'.repeat(60)}`;
    const repeats = `X:1\nM:4/4\nL:1/4\nK:C\n|:::::::: ${'CDEF|'.repeat(20_000)} CDEF :::::::::|`;
    for (const text of [rests, repeats]) {
      expect(() => readAbc(text)).toThrowError(expect.objectContaining({ code: 'FILE_TOO_LARGE' }));
    }
  });
});

/** The byte at the other place of each pair. */
function swap(bytes: Uint8Array): (byte: number, index: number) => number {
  return (_, index) => bytes[index ^ 1] ?? 0;
}
