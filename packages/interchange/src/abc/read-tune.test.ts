import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Piece } from '../piece.js';
import { readAbc } from './read-abc.js';

/** The one tune of lines of ABC. */
function read(...lines: readonly string[]): Piece {
  const [piece] = readAbc(`${lines.join('\n')}\n`);
  if (piece === undefined) throw new Error('no tune');
  return piece;
}

const HEAD = ['X:1', 'M:4/4', 'L:1/4'] as const;
const pitches = ({ parts }: Piece): readonly (readonly number[])[] =>
  parts.map(({ line }) => line.notes.map(({ pitch }) => pitch));
const warned = ({ warnings }: Piece): readonly (readonly unknown[])[] =>
  warnings.map(({ code, value, where }) => [code, value, where.line]);

/** What a voice or key can say of its shift, and by how many semitones. */
const SHIFTS = [
  ['clef=treble-8', -12],
  ['treble+8', 12],
  ['octave=-1', -12],
  ['transpose=-2', -2],
  ['clef=bass octave=1', 12],
  ['clef=treble', 0],
] as const;
const shifts = fc.constantFrom(...SHIFTS);

describe('readTune, voices', () => {
  // Files name a voice with its clef each time that it goes on: common practice, no source.
  test('readTune shifts a voice once, however often it is named with its clef', () => {
    fc.assert(
      fc.property(shifts, fc.integer({ min: 1, max: 4 }), ([words, semitones], times) => {
        const named = Array.from({ length: times }, () => [`V:1 ${words}`, 'CDEF|']).flat();
        const piece = read(...HEAD, `V:1 ${words}`, 'K:C', ...named);
        expect(pitches(piece)).toEqual([
          Array.from({ length: times }, () => [60, 62, 64, 65].map((at) => at + semitones)).flat(),
        ]);
      }),
    );
  });

  test('readTune shifts voices by the key of the head, whether they stand before it or after', () => {
    fc.assert(
      fc.property(shifts, fc.boolean(), ([words, semitones], isBefore) => {
        const early = isBefore ? ['V:1'] : [];
        const piece = read(...HEAD, ...early, `K:C ${words}`, 'V:1', 'C4|');
        expect(pitches(piece)).toEqual([[60 + semitones]]);
      }),
    );
  });

  test('readTune adds the shift of a voice to that of the key, and keeps other voices', () => {
    const piece = read(...HEAD, 'K:C octave=-1', 'V:1 transpose=2', 'C4|', 'V:2', 'C4|');
    expect(pitches(piece)).toEqual([[50], [48]]);
  });

  test('readTune keeps the shift through a change of key that says nothing of it', () => {
    expect(pitches(read(...HEAD, 'K:C octave=-1', 'C4|[K:G]C4|'))).toEqual([[48, 48]]);
    expect(pitches(read(...HEAD, 'K:C octave=-1', 'C4|[K:G octave=1]C4|'))).toEqual([[48, 72]]);
    expect(pitches(read(...HEAD, 'K:C', 'K:G octave=1', 'F4|'))).toEqual([[78]]);
  });

  test('readTune takes the shift of a clef alone, and warns of no key that is no clef', () => {
    const piece = read(...HEAD, 'K:G', 'F4|[K:treble-8]F4|[K:perc]F4|');
    expect([pitches(piece), warned(piece)]).toEqual([[[66, 54, 54]], []]);
    expect(warned(read(...HEAD, 'K:H', 'F4|'))).toEqual([['field-unknown', 'K:H', 4]]);
  });
});

describe('readTune, fields', () => {
  test('readTune says of a macro and of a tempo without its sign that they are not read', () => {
    const piece = read('X:1', 'M:4/4', 'Q:1/4 120', 'm: ~G = {A}G', 'K:C', 'C4|');
    expect(warned(piece)).toEqual([['field-unknown', 'Q:1/4 120', 3]]);
    expect(piece.warnings[0]?.count).toBe(2);
    expect(piece.line.tempo).toBeUndefined();
  });

  test('readTune takes tempo in words for no loss, and finds the number beside them', () => {
    expect(warned(read(...HEAD, 'Q:"slow"', 'K:C', 'C4|'))).toEqual([]);
    expect(read(...HEAD, 'Q:"slow" 1/4=60', 'K:C', 'C4|').line.tempo).toBe(60);
  });

  test('readTune passes a line over that goes on with the field before', () => {
    const piece = read(...HEAD, 'K:C', 'C4|', 'w:la', '+:a b c', 'D4|');
    expect(pitches(piece)).toEqual([[60, 62]]);
  });
});

describe('splitTuneBook, blocks of text', () => {
  const TUNE = [...HEAD, 'K:C', 'CDEF|', 'GABc|', 'c4|]'] as const;

  // ABC 2.1, text directives: %%begintext to %%endtext (from memory).
  test('a block of text changes nothing of a tune, wherever between its lines it stands', () => {
    const words = fc.array(fc.stringMatching(/^[a-gA-G |XK:]{0,12}$/u), { maxLength: 4 });
    const places = fc.integer({ min: 1, max: TUNE.length });
    const names = fc.constantFrom('text', 'ps', 'svg');
    fc.assert(
      fc.property(words, places, names, (lines, at, name) => {
        const block = [`%%begin${name} left`, ...lines, `%%end${name}`];
        expect(pitches(read(...TUNE.slice(0, at), ...block, ...TUNE.slice(at)))).toEqual(
          pitches(read(...TUNE)),
        );
      }),
      { numRuns: 300 },
    );
  });

  test('a block of text that is never ended, or ended by another name, is no block', () => {
    const all = pitches(read(...TUNE));
    expect(pitches(read(...TUNE.slice(0, 4), '%%begintext', ...TUNE.slice(4)))).toEqual(all);
    const other = [...TUNE.slice(0, 4), '%%begintext', ...TUNE.slice(4), '%%endps'];
    expect(pitches(read(...other))).toEqual(all);
  });

  test('lines behind a block of text keep their numbers', () => {
    const piece = read(...HEAD, 'K:C', '%%begintext', 'a b', '%%endtext', 'C3 $C|');
    expect(warned(piece)).toEqual([['symbol-unknown', '$', 8]]);
  });
});
