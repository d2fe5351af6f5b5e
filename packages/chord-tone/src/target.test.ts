import { makeHarp, soundings, soundingsAt } from '@reedplate/layout';
import { parseChord } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { targetsOf } from './target.js';

const harp = makeHarp('C');

function placesOf(chord: string, degree: string, level: 'natural' | 'bends' | 'overbends'): string {
  return targetsOf(chord, harp, { level })
    .filter((target) => target.degree === degree)
    .map(
      ({ sounding }) => `${sounding.hole}${sounding.breath.charAt(0)}${"'".repeat(sounding.depth)}`,
    )
    .join(' ');
}

describe('targetsOf', () => {
  it('finds the roots of I, IV and V of a blues in G on a C harp', () => {
    expect(placesOf('G7', '1', 'natural')).toBe('2d 3b 6b 9b');
    expect(placesOf('C7', '1', 'natural')).toBe('1b 4b 7b 10b');
    expect(placesOf('D7', '1', 'natural')).toBe('1d 4d 8d');
  });

  it('finds the third of V only by bending or overbending', () => {
    expect(placesOf('D7', '3', 'natural')).toBe('');
    expect(placesOf('D7', '3', 'bends')).toBe("2d' 9b'");
    expect(placesOf('D7', '3', 'overbends')).toBe("2d' 5b' 9b'");
  });

  it('spells each tone by its chord', () => {
    const names = targetsOf('Db7', makeHarp('Db'), { level: 'natural' }).map(({ name }) => name);
    expect(names).toContain('F4');
    expect(
      targetsOf('Db7', makeHarp('Gb'), { level: 'natural' }).map(({ name }) => name),
    ).toContain('Cb6');
  });

  it('gives the distance from where the player is, and none without', () => {
    const [from] = soundingsAt(harp, 2, 'draw');
    if (from === undefined) throw new Error('no sounding');
    const near = targetsOf('C', harp, { level: 'natural', from }).find(
      ({ sounding }) => sounding.hole === 4 && sounding.breath === 'blow',
    );
    expect(near?.distance).toEqual({ semitones: 5, holes: 2, breathChange: true });
    expect(targetsOf('C', harp)[0]).not.toHaveProperty('distance');
  });

  it('uses the lower reeds of a half-valved harp', () => {
    const plain = targetsOf('Gb', harp, { level: 'bends' }).length;
    expect(targetsOf('Gb', harp, { level: 'bends', valved: true }).length).toBeGreaterThan(plain);
  });

  it('gives frozen targets', () => {
    expect(Object.isFrozen(targetsOf('G7', harp))).toBe(true);
    expect(Object.isFrozen(targetsOf('G7', harp)[0])).toBe(true);
  });

  it('finds anew for a chord that was changed', () => {
    const chord = JSON.parse(JSON.stringify(parseChord('G')));
    const before = targetsOf(chord, harp).length;
    chord.tones.pop();
    expect(targetsOf(chord, harp).length).toBeLessThan(before);
  });

  it('follows the order of the soundings', () => {
    const order = soundings(harp);
    const places = targetsOf('G7', harp).map(({ sounding }) => order.indexOf(sounding));
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it('throws CHORD_UNKNOWN for what is no chord', () => {
    for (const text of ['H7', '', 'valueOf', '__proto__']) {
      expect(() => targetsOf(text, harp)).toThrow(
        expect.objectContaining({ code: 'CHORD_UNKNOWN' }),
      );
    }
  });

  it('throws OPTION_UNKNOWN for a level that does not exist', () => {
    const level = 'expert' as 'bends';
    expect(() => targetsOf('G', harp, { level })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});
