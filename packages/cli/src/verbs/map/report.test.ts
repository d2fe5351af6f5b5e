import { makeHarp, soundings } from '@reedplate/layout';
import { degreeAbove, midi, parseKey, toPitchClass } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { harps, keys } from '../../shared/arbitraries.fixture.js';
import { mapReport } from './report.js';

const ORDER = ['natural', 'bend', 'valved-bend', 'overblow', 'overdraw'];

describe('mapReport', () => {
  test('mapReport has every sounding of the harp once, under its hole', () => {
    fc.assert(
      fc.property(harps, fc.boolean(), (harp, valved) => {
        const told = mapReport(harp, { valved }).holes.flatMap(({ hole, soundings: all }) =>
          all.map(({ breath, technique, depth, pitch }) =>
            JSON.stringify({ hole, breath, technique, depth, pitch }),
          ),
        );
        const known = soundings(harp, { level: 'overbends', valved }).map(
          ({ hole, breath, technique, depth, pitch }) =>
            JSON.stringify({ hole, breath, technique, depth, pitch }),
        );
        expect(told.sort()).toEqual(known.sort());
      }),
    );
  });

  test('mapReport begins every hole with its two reeds, then bends, then overbends', () => {
    fc.assert(
      fc.property(harps, fc.boolean(), (harp, valved) => {
        for (const { hole, soundings: all } of mapReport(harp, { valved }).holes) {
          const reeds = harp.holes[hole - 1];
          expect(all.slice(0, 2).map(({ pitch }) => pitch)).toEqual([reeds?.blow, reeds?.draw]);
          const places = all.map(({ technique }) => ORDER.indexOf(technique));
          expect(places).toEqual([...places].sort((a, b) => a - b));
        }
      }),
    );
  });

  test('mapReport names each pitch rightly, and its frequency to a thousandth', () => {
    fc.assert(
      fc.property(harps, fc.option(keys, { nil: undefined }), (harp, key) => {
        const report = mapReport(harp, key === undefined ? {} : { key });
        for (const { note, pitch, frequency } of report.holes.flatMap((hole) => hole.soundings)) {
          expect(midi(note)).toBe(pitch);
          expect(frequency).toBeCloseTo(440 * 2 ** ((pitch - 69) / 12), 2);
        }
      }),
    );
  });

  test('mapReport gives degrees of the song where a key is given, and none without', () => {
    fc.assert(
      fc.property(harps, keys, (harp, key) => {
        const withKey = mapReport(harp, { key });
        expect(withKey.key).toBe(key.name);
        for (const { degree, pitch } of withKey.holes.flatMap((hole) => hole.soundings)) {
          expect(degree).toBe(degreeAbove(toPitchClass(pitch), key.pitchClass));
        }
        const without = mapReport(harp);
        expect(without.key).toBeNull();
        for (const sounding of without.holes.flatMap((hole) => hole.soundings)) {
          expect(sounding).not.toHaveProperty('degree');
        }
      }),
    );
  });

  test('mapReport spells by the song, not by the harp', () => {
    const note = (key?: string) =>
      mapReport(makeHarp('C'), key === undefined ? {} : { key: parseKey(key) }).holes[1]
        ?.soundings[2]?.note;
    expect([note(), note('G'), note('Db')]).toEqual(['F#4', 'F#4', 'Gb4']);
  });
});
