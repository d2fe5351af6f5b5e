import { makeHarp } from '@reedplate/layout';
import { parseKey } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import {
  composePositions,
  enharmonicKeys,
  harpKeyOf,
  POSITIONS,
  positionByNumber,
  positionOf,
  songKeyOf,
} from './index.js';

const failure = (code: string) => expect.objectContaining({ code });

describe('songKeyOf', () => {
  it('spells with the signs of the harp', () => {
    expect(songKeyOf('C#', 2).name).toBe('G#');
    expect(songKeyOf('Db', 2).name).toBe('Ab');
    expect(songKeyOf('F#', 2).name).toBe('C#');
    expect(songKeyOf('Gb', 2).name).toBe('Db');
    expect(songKeyOf('A', 3).name).toBe('B');
  });

  it('counts a harp labelled by its second position from its first', () => {
    expect(songKeyOf(makeHarp('Gm', { tuning: 'natural-minor' }), 2).tonic).toBe('G');
    expect(songKeyOf(makeHarp('Gm', { tuning: 'natural-minor' }), 1).tonic).toBe('C');
  });

  it('takes a parsed key and throws for what is none', () => {
    expect(songKeyOf(parseKey('A'), 2).name).toBe('E');
    expect(() => songKeyOf('H' as 'B', 2)).toThrow(failure('KEY_UNKNOWN'));
    expect(() => songKeyOf('valueOf' as 'B', 2)).toThrow(failure('KEY_UNKNOWN'));
  });

  it.each([0, 13, 1.5, -1, Number.NaN])('throws NUMBER_RANGE for position %s', (position) => {
    expect(() => songKeyOf('C', position)).toThrow(failure('NUMBER_RANGE'));
    expect(() => harpKeyOf('C', position)).toThrow(failure('NUMBER_RANGE'));
    expect(() => composePositions(1, position)).toThrow(failure('NUMBER_RANGE'));
  });
});

describe('harpKeyOf', () => {
  it('names a harp by a major key where its tuning does, whatever the mode of the song', () => {
    expect(harpKeyOf('Am', 2).name).toBe('D');
    expect(harpKeyOf('Am', 3).name).toBe('G');
    expect(harpKeyOf('Am', 4).name).toBe('C');
  });

  it('respects the label of the tuning', () => {
    expect(harpKeyOf('A', 2, { tuning: 'natural-minor' }).name).toBe('Am');
    expect(harpKeyOf('Am', 1, { tuning: 'harmonic-minor' }).name).toBe('Am');
    expect(harpKeyOf('Am', 4, { tuning: 'harmonic-minor' }).name).toBe('Cm');
    expect(harpKeyOf('G', 2, { tuning: 'raised-third-blow-and-fifth-and-ninth-draw' }).name).toBe(
      'G',
    );
  });

  it('throws TUNING_UNKNOWN for a tuning there is not', () => {
    expect(() => harpKeyOf('A', 2, { tuning: 'nope' })).toThrow(failure('TUNING_UNKNOWN'));
  });
});

describe('positionOf', () => {
  it('reads every spelling a band would say', () => {
    expect(positionOf('Db', 'G#')).toBe(2);
    expect(positionOf('C#', 'Ab')).toBe(2);
    expect(positionOf('B', 'Gb')).toBe(2);
    expect(positionOf('Cb', 'F#')).toBe(2);
  });

  it('takes a harp by its name, register and tuning among it', () => {
    expect(positionOf('low F', 'C')).toBe(2);
    expect(positionOf('Dm natural-minor', 'Dm')).toBe(2);
  });

  it('does not mind the mode of the song', () => {
    expect(positionOf('C', 'Dm')).toBe(3);
    expect(positionOf('C', 'D')).toBe(3);
  });
});

describe('positionByNumber', () => {
  it('gives every position by its number', () => {
    expect(POSITIONS.map(({ number }) => positionByNumber(number))).toEqual(POSITIONS);
    expect(POSITIONS.map(({ ordinal }) => ordinal).join(' ')).toBe(
      '1st 2nd 3rd 4th 5th 6th 7th 8th 9th 10th 11th 12th',
    );
  });
});

describe('enharmonicKeys', () => {
  it('keeps the mode', () => {
    expect(enharmonicKeys('D#m').map(({ name }) => name)).toEqual(['D#m', 'Ebm']);
    expect(enharmonicKeys('B').map(({ name }) => name)).toEqual(['B', 'Cb']);
  });
});
