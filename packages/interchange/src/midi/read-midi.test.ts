import { describe, expect, test } from 'vitest';
import type { Piece } from '../piece.js';
import { chunk, midiFile, number, text } from './midi-bytes.fixture.js';
import { type ReadMidiOptions, readMidi } from './read-midi.js';

const END = [0, 0xff, 0x2f, 0];
const read = (track: readonly number[], options: ReadMidiOptions = {}): Piece =>
  readMidi(midiFile([[...track, ...END]]), options);
const notes = ({ line }: Pick<Piece, 'line'>): readonly string[] =>
  line.notes.map(({ start, duration, pitch }) => `${start}+${duration} ${pitch}`);
const codes = ({ warnings }: Piece): readonly string[] => warnings.map(({ code }) => code);

describe('readMidi, notes', () => {
  test('readMidi pairs note on with note off, at 960 ticks to the quarter', () => {
    expect(notes(read([0, 0x90, 67, 90, 96, 0x80, 67, 0]))).toEqual(['0+960 67']);
  });

  test('readMidi reads running status, and a velocity of 0 as an end', () => {
    expect(notes(read([0, 0x90, 67, 90, 48, 67, 0, 48, 69, 90, 96, 69, 0]))).toEqual([
      '0+480 67',
      '960+960 69',
    ]);
  });

  test('readMidi ends overlapping notes of one pitch in the order they began', () => {
    expect(notes(read([0, 0x90, 67, 90, 48, 67, 90, 48, 67, 0, 48, 67, 0]))).toEqual([
      '0+960 67',
      '480+960 67',
    ]);
  });

  test('readMidi ends what is never ended at the end of its track, with a warning', () => {
    const piece = read([0, 0x90, 67, 90, 96, 0x90, 69, 90, 96, 0x80, 69, 0]);
    expect([notes(piece), codes(piece)]).toEqual([['0+1920 67', '960+960 69'], ['note-open']]);
  });

  test('readMidi leaves out notes of no length, with a warning', () => {
    const piece = read([0, 0x90, 67, 90, 0, 67, 0, 0, 69, 90, 96, 69, 0]);
    expect([notes(piece), codes(piece)]).toEqual([['0+960 69'], ['note-empty']]);
  });

  test('readMidi passes over system exclusive data, controllers and unknown meta events', () => {
    const noise = [0, 0xf0, 2, 0x7e, 0xf7, 0, 0xb0, 7, 100, 0, 0xff, 0x60, 1, 5, 0, 0xd0, 4];
    expect(notes(read([...noise, 0, 0xa0, 67, 3, 0, 0x90, 67, 90, 96, 67, 0]))).toEqual([
      '0+960 67',
    ]);
  });

  test('readMidi rounds times that are no whole ticks, without drift', () => {
    const track = [...Array(7)].flatMap(() => [0, 0x90, 67, 90, 1, 67, 0]);
    const piece = readMidi(midiFile([track], 7));
    expect(piece.line.notes.map(({ start }) => start)).toEqual([0, 137, 274, 411, 549, 686, 823]);
  });

  test('readMidi counts seconds where the file does: half a second is a quarter', () => {
    const seconds25Frames40 = 0xe728;
    const track = [0, 0x90, 67, 90, 0x83, 0x74, 67, 0];
    expect(notes(readMidi(midiFile([track], seconds25Frames40)))).toEqual(['0+960 67']);
  });
});

describe('readMidi, bends', () => {
  const bend = (value: number) => [0xe0, (value + 8192) & 0x7f, (value + 8192) >> 7];

  test('readMidi reads a bend of a semitone as the pitch it reaches', () => {
    // The usual range of the wheel is two semitones: General MIDI 1, value from memory.
    const track = [0, ...bend(-4096), 0, 0x90, 67, 90, 96, 0x80, 67, 0];
    expect(notes(read(track))).toEqual(['0+960 66']);
    expect(notes(read(track, { bends: false }))).toEqual(['0+960 67']);
    expect(read(track).warnings).toEqual([]);
  });

  test('readMidi cuts a note where its bend passes a semitone, and skips the glide', () => {
    const track = [0, 0x90, 67, 90, 48, ...bend(-2048), 2, ...bend(-4096), 46, 0x80, 67, 0];
    const piece = read(track);
    expect(notes(piece)).toEqual(['0+500 67', '500+460 66']);
    // The glide is at the end of the first, beside its pitch.
    expect(piece.line.notes.map(({ curve }) => curve)).toEqual([
      [
        { at: 0, cents: 0 },
        { at: 479, cents: 0 },
        { at: 480, cents: -50 },
      ],
      undefined,
    ]);
    expect(codes(piece)).toEqual([]);
  });

  test('readMidi reads the range of bends from the file', () => {
    const range = [0, 0xb0, 101, 0, 0, 100, 0, 0, 6, 12];
    const track = [...range, 0, ...bend(-4096), 0, 0x90, 67, 90, 96, 0x80, 67, 0];
    expect(notes(read(track))).toEqual(['0+960 61']);
  });

  test('readMidi takes no other registered parameter for the range', () => {
    const tuning = [0, 0xb0, 101, 0, 0, 100, 2, 0, 6, 12];
    const track = [...tuning, 0, ...bend(-4096), 0, 0x90, 67, 90, 96, 0x80, 67, 0];
    expect(notes(read(track))).toEqual(['0+960 66']);
  });
});

describe('readMidi, heads', () => {
  const note = [0, 0x90, 67, 90, 96, 67, 0];
  const tempo = (microseconds: number) => [0, 0xff, 0x51, 3, ...number(microseconds, 3)];
  const metre = (upper: number, power: number) => [0, 0xff, 0x58, 4, upper, power, 24, 8];

  test('readMidi reads tempo in felt beats, metre and key', () => {
    const piece = read([...metre(6, 3), ...tempo(500_000), 0, 0xff, 0x59, 2, 0xfe, 1, ...note]);
    expect(piece.line).toMatchObject({ metre: '6/8', tempo: 80 });
    expect(piece.key).toBe('Gm');
  });

  test('readMidi takes 4/4 and no tempo where nothing is said', () => {
    expect(read(note).line).not.toHaveProperty('tempo');
    expect(read(note).line.metre).toBe('4/4');
  });

  test('readMidi warns of later metres, and of tempos that no line has', () => {
    const piece = read([...metre(4, 2), ...tempo(500_000), ...note, ...metre(3, 2), ...tempo(1)]);
    expect(codes(piece)).toEqual(['metre-change', 'field-unknown']);
    expect(piece.line.tempo).toBe(120);
  });

  test('readMidi keeps later tempos, and takes 120 before the first that comes late', () => {
    const changes = [...tempo(500_000), ...note, ...tempo(1_000_000), ...note, ...tempo(500_000)];
    const { line } = read([...changes, ...note]);
    expect([line.tempo, line.tempoChanges]).toEqual([
      120,
      [
        { start: 960, tempo: 60 },
        { start: 1920, tempo: 120 },
      ],
    ]);
    const late = read([...note, ...tempo(1_000_000), ...tempo(600_000), ...note]).line;
    expect([late.tempo, late.tempoChanges]).toEqual([120, [{ start: 960, tempo: 100 }]]);
  });

  test.each([
    ['Count-in: 2 bars', 2],
    ['count in', 1],
    ['COUNT-IN 4', 4],
    ['Count-in: 99', undefined],
    ['Counting', undefined],
  ])('readMidi takes the marker %j at the beginning for %s bars counted in', (marker, bars) => {
    expect(read([...text(6, marker), ...note]).line.countIn).toBe(bars);
    expect(read([...note, ...text(6, marker), ...note]).line.countIn).toBeUndefined();
  });

  test('readMidi reads chords beside a count-in, bar 1 of the chart being bar 1 of the line', () => {
    const { chart } = read([
      ...text(6, 'Count-in: 1 bar'),
      ...Array(4).fill(note).flat(),
      ...text(6, 'G7'),
      ...Array(4).fill(note).flat(),
    ]);
    expect(chart?.spans.map(({ start, chord }) => [start, chord?.symbol])).toEqual([[0, 'G7']]);
  });

  test('readMidi passes over a count-in where a pickup leaves no room for it', () => {
    const head = [...text(6, 'Count-in'), ...metre(1, 2), ...note, ...metre(4, 2)];
    const piece = read([...head, ...note]);
    expect([piece.line.countIn, piece.line.pickup]).toEqual([undefined, 960]);
    expect(codes(piece)).toEqual(['field-unknown']);
  });

  test('readMidi reads a short first bar of another metre as a pickup', () => {
    const piece = read([...metre(1, 2), ...note, ...metre(4, 2), ...note]);
    expect(piece.line).toMatchObject({ metre: '4/4', pickup: 960 });
    expect(piece.warnings).toEqual([]);
  });

  test('readMidi writes 32nds as larger units where it can, and warns where it cannot', () => {
    expect(read([...metre(24, 5), ...note]).line.metre).toBe('12/16');
    expect(codes(read([...metre(7, 5), ...note]))).toEqual(['field-unknown']);
  });

  test('readMidi reads markers that are chords as a chart, and others as sections', () => {
    const marked = (...marks: readonly string[]) =>
      read([...marks.flatMap((mark) => [...text(6, mark), ...note])]);
    const spans = marked('G7', 'Cmaj', 'N.C.').chart?.spans ?? [];
    expect(spans.map(({ start, chord }) => `${start} ${chord?.symbol}`)).toEqual([
      '0 G7',
      '960 C',
      '1920 undefined',
    ]);
    expect(marked('A', 'B').chart).toBeUndefined();
    expect(marked('Verse', 'G7').chart).toBeUndefined();
  });
});

describe('readMidi, parts', () => {
  const part = (channel: number, pitch: number, head: readonly number[] = []) => [
    ...head,
    ...[0, 0x90 + channel, pitch, 90, 48, pitch, 0, 0, pitch + 2, 90, 48, pitch + 2, 0],
  ];

  test('readMidi makes a part of each channel of each track, with name and program', () => {
    const piece = readMidi(
      midiFile([
        text(3, 'Song'),
        [...part(0, 40, [...text(3, 'Low'), 0, 0xc0, 32]), ...part(1, 80)],
        part(9, 35, text(3, 'Kit')),
      ]),
    );
    expect(piece.line.title).toBe('Song');
    expect(piece.parts).toMatchObject([
      { name: 'Low', program: 33 },
      { name: 'Low' },
      { name: 'Kit', percussion: true },
    ]);
  });

  test('readMidi takes the highest part for the melody, unless one is a harmonica or named so', () => {
    const low = part(0, 40);
    const high = part(1, 80);
    const harp = part(2, 60, [0, 0xc2, 22]);
    const voice = part(3, 50, text(3, 'Lead vocal'));
    const first = (...tracks: readonly (readonly number[])[]) =>
      readMidi(midiFile(tracks)).line.notes[0]?.pitch;
    expect(first(low, high)).toBe(80);
    expect(first(low, high, harp)).toBe(60);
    expect(first(low, high, voice)).toBe(50);
    expect(first(part(9, 81), low)).toBe(40);
  });

  test('readMidi takes one note at a time for the melody before chords', () => {
    const chords = [0, 0x90, 70, 90, 0, 74, 90, 0, 77, 90, 96, 70, 0, 0, 74, 0, 0, 77, 0];
    expect(readMidi(midiFile([chords, part(1, 60)])).line.notes[0]?.pitch).toBe(60);
  });

  test('readMidi takes the part asked for, by number or name, and lists them for a wrong one', () => {
    const file = midiFile([part(0, 40, text(3, 'Low')), part(1, 80)]);
    expect(readMidi(file, { part: 1 }).line.notes[0]?.pitch).toBe(40);
    expect(readMidi(file, { part: 'Low' }).line.notes[0]?.pitch).toBe(40);
    for (const wrong of [3, 0, 'High']) {
      expect(() => readMidi(file, { part: wrong })).toThrowError(
        expect.objectContaining({
          code: 'OPTION_UNKNOWN',
          expected: expect.stringMatching(/1 \(Low\), 2/u),
        }),
      );
    }
  });

  test('readMidi of a file without notes says so', () => {
    const piece = read([]);
    expect([piece.parts, codes(piece)]).toEqual([[], ['notes-missing']]);
  });
});

describe('readMidi, damage', () => {
  const good = [0, 0x90, 67, 90, 96, 67, 0];

  test.each([
    ['an unfinished event', [0, 0x90]],
    ['data without a status', [0, 60, 60]],
    ['a time too long', [0xff, 0xff, 0xff, 0xff, 0x7f]],
    ['data above 127', [0, 0x90, 67, 200]],
    ['an event of no file', [0, 0xf1]],
    ['text longer than its track', [0, 0xff, 1, 0x8f, 0xff, 0xff, 0x78]],
  ])('readMidi keeps what stands before %s', (name, bad) => {
    const before = name === 'data without a status' ? [] : good;
    const piece = readMidi(midiFile([good, [...before, ...bad]]));
    expect(piece.parts.length).toBe(before.length === 0 ? 1 : 2);
    expect(codes(piece)).toContain('data-malformed');
  });

  test('readMidi passes over chunks of other kinds, and reads a RIFF file', () => {
    const file = [...midiFile([])].slice(0, 14);
    const bytes = [...file, ...chunk('XFIH', [1, 2, 3]), ...chunk('MTrk', good)];
    expect(notes(readMidi(Uint8Array.from(bytes)))).toEqual(['0+960 67']);
    const riff = [...Buffer.from('RIFF\0\0\0\0RMIDdata\0\0\0\0'), ...bytes];
    expect(notes(readMidi(Uint8Array.from(riff)))).toEqual(['0+960 67']);
  });

  test('readMidi reads a last track that is cut short as far as it goes', () => {
    const whole = midiFile([good]);
    whole[21] = 200;
    const piece = readMidi(whole);
    expect([notes(piece), codes(piece)]).toEqual([['0+960 67'], ['data-malformed']]);
  });

  test.each([
    ['nothing', new Uint8Array()],
    ['no MIDI', Uint8Array.from(Buffer.from('X:1\nT:this is ABC'))],
    ['no track', midiFile([])],
    ['no ticks to the quarter', midiFile([good], 0)],
    ['a length of 4 GB', midiFile([good]).fill(255, 18, 22)],
    ['too many tracks', midiFile(Array(1100).fill([]))],
  ])('readMidi refuses %s', (_, bytes) => {
    expect(() => readMidi(bytes)).toThrowError(expect.objectContaining({ code: 'MIDI_MALFORMED' }));
  });

  test('readMidi keeps the chart of a track that ends years later in bounds', () => {
    const late = Array(40).fill([0xff, 0xff, 0xff, 0x7f, 0xc0, 1]).flat();
    const piece = read([...text(6, 'G7'), ...good, ...late]);
    expect(piece.chart?.bars).toBe(1016);
    expect(codes(piece)).toEqual(['data-malformed']);
  });

  test('readMidi refuses what are no bytes, too many bytes, and too many events', () => {
    // @ts-expect-error: a file is bytes
    expect(() => readMidi('MThd')).toThrowError(/Uint8Array/u);
    expect(() => readMidi(new Uint8Array(17 * 1024 * 1024))).toThrowError(/16 MB/u);
    const events = Array(500_001).fill([0, 0xc0, 1]).flat();
    expect(() => readMidi(midiFile([events]))).toThrowError(/500000 events/u);
  }, 60_000);
});
