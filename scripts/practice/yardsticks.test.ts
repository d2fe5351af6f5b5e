import { describe, expect, it } from 'vitest';
import {
  degreesOf,
  distance,
  intervalsOf,
  lengthsOf,
  median,
  melodyOf,
  notesInPatterns,
  phraseLengths,
  repeatedPatterns,
  restShare,
  sharesOf,
  variety,
} from './yardsticks.js';

describe('yardsticks', () => {
  it('distance is 0 between the same shares, 1 where nothing is shared, and half for half', () => {
    expect(distance(sharesOf(['a', 'b']), sharesOf(['b', 'a']))).toBe(0);
    expect(distance(sharesOf(['a']), sharesOf(['b']))).toBe(1);
    expect(distance(sharesOf(['a', 'b']), sharesOf(['a', 'a']))).toBe(0.5);
  });

  it('intervalsOf counts semitones, melodyOf takes the highest of a chord', () => {
    expect(intervalsOf([60, 64, 62])).toEqual(['4', '-2']);
    const notes = [60, 64].map((pitch) => ({ start: 0, duration: 1, pitch }));
    expect(melodyOf({ notes })).toEqual([64]);
  });

  it('repeatedPatterns is 1 for a line that goes round, 0 where nothing comes again', () => {
    expect(repeatedPatterns([0, 1, 2, 3, 4, 5, 6, 7, 8])).toBe(1);
    expect(repeatedPatterns([0, 1, 3, 6, 10, 15, 21])).toBe(0);
  });
});

const at = (start: number, duration: number, pitch = 60) => ({ start, duration, pitch });

describe('time', () => {
  it('restShare counts what is silent between the first note and the end of the last', () => {
    expect(restShare({ notes: [at(960, 960), at(2880, 960)] })).toBeCloseTo(1 / 3);
    expect(restShare({ notes: [] })).toBe(0);
  });

  it('phraseLengths parts a line at rests of a quarter, not at shorter ones', () => {
    const notes = [at(0, 480), at(960, 960), at(2880, 1920)];
    expect(phraseLengths({ notes })).toEqual(['2', '2']);
    expect(phraseLengths({ notes: [at(0, 99_999)] })).toEqual(['16']);
  });

  it('lengthsOf counts in sixteenths', () => {
    expect(lengthsOf({ notes: [at(0, 960), at(960, 480), at(1440, 250)] })).toEqual([
      '4',
      '2',
      '1',
    ]);
  });
});

describe('patterns of a set', () => {
  it('notesInPatterns finds a pattern again in another line, at any pitch', () => {
    const line = [60, 62, 64, 65, 67];
    expect(notesInPatterns([line, line.map((pitch) => pitch + 5)])).toBeCloseTo(2 / 10);
    expect(notesInPatterns([line])).toBe(0);
  });

  it('variety is low for what goes round and 1 where nothing comes again', () => {
    expect(variety([0, 1, 2, 3, 4, 5, 6])).toBeCloseTo(1 / 3);
    expect(variety([0, 1, 3, 6, 10, 15, 21])).toBe(1);
  });

  it('degreesOf counts from the tonic, below it too', () => {
    expect(degreesOf([67, 70, 65], 67)).toEqual(['0', '3', '10']);
    expect(median([3, 1, 2, 10])).toBe(2.5);
  });
});
