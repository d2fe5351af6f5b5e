import { makeHarp, makeTuning } from '@reedplate/layout';
import { parseKey, parseScale } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { easiestOf } from './easiest.js';
import { scaleShare } from './scale-share.js';
import { EASE_OF_TECHNIQUE } from './weights.js';

const fitOf = (scale: string, key: string, level: 'natural' | 'bends' | 'overbends') =>
  scaleShare(easiestOf(makeHarp('C'), { level }), parseKey(key), parseScale(scale));

describe('scaleShare', () => {
  it('counts the notes between the lowest and the highest reed', () => {
    // C4 to C7 holds four C, and three each of Db, D, F, G and Bb.
    const { coverage, ease } = fitOf('blues', 'G', 'natural');
    // Natural are all C, D and G, and two of the F.
    expect(coverage).toBe(12 / 19);
    expect(ease).toBe(coverage);
  });

  it('counts bends by their ease, and in full for the coverage', () => {
    const { coverage, ease } = fitOf('blues', 'G', 'bends');
    // F4, Bb4, Bb6, Db4 and Db5 are bends; Bb5 and Db6 are missing.
    expect(coverage).toBe(17 / 19);
    expect(ease).toBeCloseTo((12 + 5 * EASE_OF_TECHNIQUE.bend) / 19, 12);
  });

  it('tells what is missing everywhere from what is missing in one octave', () => {
    expect(fitOf('blues', 'G', 'natural')).toMatchObject({
      missing: ['b3', 'b5'],
      incomplete: ['b3', 'b5', 'b7'],
    });
    expect(fitOf('major', 'C', 'natural')).toMatchObject({
      missing: [],
      incomplete: ['4', '6', '7'],
    });
    expect(fitOf('chromatic', 'C', 'overbends')).toMatchObject({ missing: [], incomplete: [] });
  });

  it('is nothing where the harp spans no note of the scale', () => {
    const tuning = makeTuning({ id: 'one', blow: 'C#4', draw: 'C#4' });
    const small = makeHarp('C', { tuning });
    const { coverage, ease, missing } = scaleShare(
      easiestOf(small, {}),
      parseKey('C'),
      parseScale('major'),
    );
    expect([coverage, ease]).toEqual([0, 0]);
    expect(missing).toHaveLength(7);
  });
});
