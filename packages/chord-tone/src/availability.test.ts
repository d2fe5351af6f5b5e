import { makeHarp } from '@reedplate/layout';
import { parseKey, TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { chordAvailability } from './availability.js';

const harp = makeHarp('C');

describe('chordAvailability', () => {
  it('warns, by rule, that second position has no major V and that draw 4 and 5 contradict it', () => {
    const { whole, warnings } = chordAvailability('D7', harp);
    expect(whole).toEqual([]);
    expect(warnings.map(({ code, degrees }) => [code, degrees])).toEqual([
      ['NO_WHOLE_CHORD', ['1', '3', '5']],
      ['CLASHING_CHORD', ['3']],
      ['NO_UNBENT_TONE', ['3']],
    ]);
    expect(warnings[1]?.shape).toMatchObject({ breath: 'draw', holes: [4, 5] });
    expect(warnings[1]?.clash).toMatchObject({ above: 'b3', against: '3' });
  });

  it('gives the same warning in all twelve keys', () => {
    for (const key of TWELVE_KEYS) {
      const five = transposeKey(key, 2).tonic;
      const { warnings } = chordAvailability(`${five}7`, makeHarp(key.tonic));
      expect(warnings.map(({ code }) => code)).toEqual([
        'NO_WHOLE_CHORD',
        'CLASHING_CHORD',
        'NO_UNBENT_TONE',
      ]);
      expect(warnings[1]?.shape?.holes).toEqual([4, 5]);
    }
  });

  it('has no warning of I and IV as triads', () => {
    expect(chordAvailability('G', harp).warnings).toEqual([]);
    expect(chordAvailability('C', harp).warnings).toEqual([]);
    expect(chordAvailability('Dm', harp).warnings).toEqual([]);
  });

  it('says that a tone is not to be had at the level asked for', () => {
    const codes = (level: 'natural' | 'bends' | 'overbends'): unknown =>
      chordAvailability('Ebm', harp, { level }).warnings.map(({ code, degrees }) => [
        code,
        degrees,
      ]);
    expect(codes('natural')).toContainEqual(['NO_TONE', ['1', 'b3', '5']]);
    expect(codes('overbends')).toContainEqual(['NO_UNBENT_TONE', ['1', 'b3', '5']]);
  });

  it('does not call a chord without a third missing', () => {
    const codes = chordAvailability('F5', harp).warnings.map(({ code }) => code);
    expect(codes).not.toContain('NO_WHOLE_CHORD');
  });

  it('has a chord without a third or fifth whole where all its tones lie together', () => {
    const placesOf = (symbol: string, tuning?: 'whole-tone') =>
      chordAvailability(symbol, makeHarp('C', tuning && { tuning })).whole.map(
        ({ breath, holes }) => `${breath} ${holes.join(' ')}`,
      );
    // G and C on 3 and 4, and again on 6 and 7 and on 9 and 10, of a harp in C.
    expect(placesOf('C5')).toEqual(expect.arrayContaining(['blow 3 4', 'blow 6 7', 'blow 9 10']));
    expect(placesOf('C9no5', 'whole-tone')).toContain('blow 6 7 8 9');
    expect(chordAvailability('C5', harp).partial).toEqual([]);
  });

  it('has a natural IV chord, blow to draw, where the tuning gives one', () => {
    const minor = makeHarp('Gm', { tuning: 'natural-minor' });
    expect(parseKey(minor.key).mode).toBe('minor');
    expect(chordAvailability('Gm', minor).whole.length).toBeGreaterThan(0);
    expect(chordAvailability('Cm', minor).whole.length).toBeGreaterThan(0);
  });

  it('keeps partial shapes apart from whole ones', () => {
    const { whole, partial } = chordAvailability('G7', harp);
    expect(partial.every(({ triad }) => !triad)).toBe(true);
    expect(whole.every(({ triad }) => triad)).toBe(true);
  });
});
