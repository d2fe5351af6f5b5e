import { describe, expect, it } from 'vitest';
import { accidentalsOf, type ReadPitch } from './accidentals.js';

const NOTHING: ReadonlySet<string> = new Set();
const read = (...pitches: readonly number[]): readonly ReadPitch[] =>
  pitches.map((pitch) => ({ pitch, tiedFrom: false }));
const signs = (pitches: readonly ReadPitch[], key: 'C' | 'G', before = NOTHING) =>
  accidentalsOf(pitches, key, before).shown.map((shown) =>
    shown === undefined ? '' : `${shown.sign}${shown.cautionary ? '?' : ''}`,
  );

describe('accidentalsOf', () => {
  it('accidentalsOf shows a sign where a note differs from the key, once a bar and octave', () => {
    expect(signs(read(70, 70, 82, 72), 'C')).toEqual(['flat', '', 'flat', '']);
    expect(signs(read(66, 65, 65), 'G')).toEqual(['', 'natural', '']);
  });

  it('accidentalsOf takes a sign back within the bar', () => {
    expect(signs(read(65, 66, 65), 'G')).toEqual(['natural', 'sharp', 'natural']);
  });

  it('accidentalsOf cautions in the bar after, once', () => {
    const { altered } = accidentalsOf(read(65), 'G', NOTHING);
    expect([...altered]).toEqual(['F4']);
    expect(signs(read(67, 66, 66, 78), 'G', altered)).toEqual(['', 'sharp?', '', '']);
    expect(signs(read(65), 'G', altered)).toEqual(['natural']);
  });

  it('accidentalsOf shows none on a tied note, which sets none either', () => {
    const tied = [{ pitch: 65, tiedFrom: true }, ...read(65, 66)];
    expect(signs(tied, 'G')).toEqual(['', 'natural', 'sharp']);
  });
});
