import { makeHarp, soundings, TUNINGS } from '@reedplate/layout';
import { degreeAbove, midi, TWELVE_KEYS, toPitchClass } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harpMap } from './harp-map.js';

const ORDER = ['natural', 'bend', 'valved-bend', 'overblow', 'overdraw'];
const keys = fc.constantFrom(...TWELVE_KEYS);
const harps = fc
  .tuple(keys, fc.constantFrom(...TUNINGS))
  .map(([key, tuning]) => makeHarp(key.tonic, { tuning }));

describe('harpMap', () => {
  test('harpMap has every sounding of the harp once, under its hole', () => {
    fc.assert(
      fc.property(harps, fc.boolean(), (harp, valved) => {
        const options = { level: 'overbends', valved } as const;
        const told = harpMap(harp, options).holes.flatMap(({ hole, soundings: all }) =>
          all.map(({ name, ...sounding }) => {
            expect(sounding.hole).toBe(hole);
            return JSON.stringify(sounding);
          }),
        );
        const known = soundings(harp, options).map((sounding) => JSON.stringify(sounding));
        expect(told.sort()).toEqual(known.sort());
      }),
    );
  });

  test('harpMap begins every hole with its two reeds, then bends, then overbends', () => {
    fc.assert(
      fc.property(harps, fc.boolean(), (harp, valved) => {
        const { holes } = harpMap(harp, { level: 'overbends', valved });
        for (const { hole, soundings: all } of holes) {
          const reeds = harp.holes[hole - 1];
          expect(all.slice(0, 2).map(({ pitch }) => pitch)).toEqual([reeds?.blow, reeds?.draw]);
          const places = all.map(({ technique }) => ORDER.indexOf(technique));
          expect(places).toEqual([...places].sort((a, b) => a - b));
        }
      }),
    );
  });

  test('harpMap says which notes shade, and what hardly anyone plays', () => {
    const standard = harpMap(makeHarp('C'));
    expect(standard.shadings.map(({ hole, breath }) => `${hole} ${breath}`)).toEqual([
      '5 draw',
      '7 blow',
    ]);
    expect(standard.caveats).toEqual([]);
    const long = harpMap(makeHarp('C', { tuning: 'extended-fourteen' }));
    expect(long.caveats).toMatchObject([{ code: 'DEEP_BEND', hole: 14, breath: 'blow' }]);
  });

  test('harpMap names each pitch rightly', () => {
    fc.assert(
      fc.property(harps, fc.option(keys, { nil: undefined }), (harp, key) => {
        const { holes } = harpMap(harp, key === undefined ? {} : { key });
        for (const { name, pitch } of holes.flatMap((hole) => hole.soundings)) {
          expect(midi(name)).toBe(pitch);
        }
      }),
    );
  });

  test('harpMap gives degrees of the song where a key is given, and none without', () => {
    fc.assert(
      fc.property(harps, keys, (harp, key) => {
        const withKey = harpMap(harp, { key });
        expect(withKey.key).toBe(key.name);
        for (const { degree, pitch } of withKey.holes.flatMap((hole) => hole.soundings)) {
          expect(degree).toBe(degreeAbove(toPitchClass(pitch), key.pitchClass));
        }
        const without = harpMap(harp);
        expect(without.key).toBeNull();
        for (const sounding of without.holes.flatMap((hole) => hole.soundings)) {
          expect(sounding).not.toHaveProperty('degree');
        }
      }),
    );
  });

  test('harpMap spells by the song, not by the harp', () => {
    const nameIn = (key?: string) =>
      harpMap(makeHarp('C'), key === undefined ? {} : { key: key as 'G' }).holes[1]?.soundings[2]
        ?.name;
    expect([nameIn(), nameIn('G'), nameIn('Db')]).toEqual(['F#4', 'F#4', 'Gb4']);
  });

  test('harpMap refuses a key that is none', () => {
    expect(() => harpMap(makeHarp('C'), { key: 'H' as 'G' })).toThrow(
      expect.objectContaining({ code: 'KEY_UNKNOWN' }),
    );
  });
});
