import { makeHarp, soundingsOfPitch, transposeHarp } from '@reedplate/layout';
import { midi, parseKey, TONICS, TWELVE_KEYS, transposeKey } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp, keyName, level, scale, tonic, tuning } from '../test/arbitraries.js';
import { fewestChanges } from './fewest-changes.js';
import {
  composePositions,
  enharmonicKeys,
  type HarpPick,
  harpKeyOf,
  pickForKeys,
  pickHarps,
  planSetList,
  positionByNumber,
  positionOf,
  scaleMap,
  scaleRun,
  songKeyOf,
} from './index.js';

const position = fc.integer({ min: 1, max: 12 });

describe('positions are the cyclic group of order 12', () => {
  it('composePositions is closed, associative and commutative, with the 1st as identity', () => {
    fc.assert(
      fc.property(position, position, position, (a, b, c) => {
        expect(composePositions(composePositions(a, b), c)).toBe(
          composePositions(a, composePositions(b, c)),
        );
        expect(composePositions(a, b)).toBe(composePositions(b, a));
        expect(composePositions(a, 1)).toBe(a);
        expect(positionByNumber(composePositions(a, b)).number).toBe(composePositions(a, b));
      }),
    );
  });

  it('every position has an inverse, and the 2nd generates them all', () => {
    for (let number = 1; number <= 12; number += 1) {
      expect(composePositions(number, number === 1 ? 1 : 14 - number)).toBe(1);
    }
    let reached = 1;
    const all = new Set<number>();
    for (let step = 0; step < 12; step += 1) {
      all.add(reached);
      reached = composePositions(reached, 2);
    }
    expect(all.size).toBe(12);
    expect(reached).toBe(1);
  });

  it('composePositions is what playing one position on top of another gives', () => {
    fc.assert(
      fc.property(tonic, position, position, (key, a, b) => {
        const twice = songKeyOf(songKeyOf(key, a), b).pitchClass;
        expect(songKeyOf(key, composePositions(a, b)).pitchClass).toBe(twice);
      }),
    );
  });
});

describe('harp key, position and song key', () => {
  it('any two give the third, for all 12 times 12 and every spelling', () => {
    for (const harpKey of TONICS) {
      for (let number = 1; number <= 12; number += 1) {
        const song = songKeyOf(harpKey, number);
        for (const spelled of enharmonicKeys(song)) {
          expect(positionOf(harpKey, spelled)).toBe(number);
          expect(harpKeyOf(spelled, number).pitchClass).toBe(parseKey(harpKey).pitchClass);
        }
      }
    }
  });

  it('the spelling of a key never changes the position', () => {
    fc.assert(
      fc.property(keyName, keyName, (a, b) => {
        const positions = enharmonicKeys(a).flatMap((one) =>
          enharmonicKeys(b).map((other) => positionOf(one, other)),
        );
        expect(new Set(positions).size).toBe(1);
      }),
    );
  });

  it('harpKeyOf names a harp, in any tuning, that makeHarp makes and positionOf agrees with', () => {
    fc.assert(
      fc.property(tuning, keyName, position, (chosen, song, number) => {
        const key = harpKeyOf(song, number, { tuning: chosen });
        const made = makeHarp(key, { tuning: chosen });
        expect(made.key).toBe(key.name);
        expect(positionOf(made, song)).toBe(number);
        expect(songKeyOf(made, number).pitchClass).toBe(parseKey(song).pitchClass);
      }),
    );
  });

  it('enharmonicKeys lists keys of one pitch class and mode, the given one first', () => {
    fc.assert(
      fc.property(keyName, (name) => {
        const keys = enharmonicKeys(name);
        expect(keys[0]?.name).toBe(name);
        expect(new Set(keys.map(({ pitchClass, mode }) => `${pitchClass} ${mode}`)).size).toBe(1);
        expect(new Set(keys.map((key) => key.name)).size).toBe(keys.length);
      }),
    );
  });
});

describe('scaleMap and scaleRun', () => {
  it('list exactly what the lookup by pitch finds', () => {
    fc.assert(
      fc.property(harp, keyName, scale, level, (any, key, name, able) => {
        for (const note of scaleMap(any, key, name, { level: able }).notes) {
          expect(midi(note.name)).toBe(note.pitch);
          const found = soundingsOfPitch(any, note.pitch, { level: able });
          expect(new Set(note.soundings)).toEqual(new Set(found));
        }
      }),
      { numRuns: 60 },
    );
  });

  it('cover more with every level, and all of the scale where nothing is incomplete', () => {
    fc.assert(
      fc.property(harp, keyName, scale, (any, key, name) => {
        const { natural, bends, overbends } = scaleMap(any, key, name).levels;
        expect(natural.coverage).toBeLessThanOrEqual(bends.coverage);
        expect(bends.coverage).toBeLessThanOrEqual(overbends.coverage);
        for (const fit of [natural, bends, overbends]) {
          expect(fit.ease).toBeLessThanOrEqual(fit.coverage);
          if (fit.coverage === 1) expect(fit.incomplete).toEqual([]);
          if (fit.coverage > 0) expect(fit.missing.length === 0 || fit.coverage < 1).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('move with harp and song: the same degrees by the same soundings', () => {
    const by = fc.integer({ min: -5, max: 6 });
    fc.assert(
      fc.property(harp, tonic, by, scale, (any, key, semitones, name) => {
        const song = parseKey(key);
        const shape = (run: ReturnType<typeof scaleRun>) =>
          run.map(({ degree, sounding }) => [
            degree,
            sounding && { ...sounding, pitch: undefined },
          ]);
        const moved = scaleRun(transposeHarp(any, semitones), transposeKey(song, semitones), name);
        expect(shape(moved)).toEqual(shape(scaleRun(any, song, name)));
      }),
      { numRuns: 60 },
    );
  });

  it('scaleRun rises and falls by the same notes', () => {
    fc.assert(
      fc.property(harp, keyName, scale, (any, key, name) => {
        const pitches = scaleRun(any, key, name).map(({ pitch }) => pitch);
        expect(pitches).toEqual([...pitches].reverse());
      }),
      { numRuns: 60 },
    );
  });
});

describe('pickHarps', () => {
  it('moves with the song: the same positions with the same weights in every key', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TWELVE_KEYS), level, scale, (key, able, name) => {
        const order = (picks: readonly HarpPick[]) =>
          picks.map((pick) => [pick.position, pick.weight.toFixed(9)]);
        const options = { level: able, scale: name } as const;
        expect(order(pickHarps(key, options))).toEqual(order(pickHarps('C', options)));
      }),
      { numRuns: 40 },
    );
  });

  it('weighs between 0 and 1, the best first', () => {
    fc.assert(
      fc.property(keyName, tuning, level, (key, chosen, able) => {
        const weights = pickHarps(key, { tuning: chosen, level: able }).map(({ weight }) => weight);
        expect(weights).toHaveLength(12);
        expect(weights.every((weight) => weight >= 0 && weight <= 1)).toBe(true);
        expect(weights).toEqual([...weights].sort((a, b) => b - a));
      }),
      { numRuns: 40 },
    );
  });

  it('weighs a harp alike, whatever else is owned', () => {
    const own = fc.uniqueArray(tonic, { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(keyName, own, (key, owned) => {
        for (const { harp: one, weight } of pickHarps(key, { own: owned })) {
          expect(pickHarps(key, { own: [one] })[0]?.weight).toBe(weight);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('pickForKeys of one section is pickHarps', () => {
    fc.assert(
      fc.property(keyName, (key) => {
        const one = pickForKeys([{ key }]).map(({ harp: picked, weight }) => [picked.key, weight]);
        const other = pickHarps(key).map(({ harp: picked, weight }) => [picked.key, weight]);
        expect(new Map(one as [string, number][])).toEqual(new Map(other as [string, number][]));
      }),
      { numRuns: 20 },
    );
  });
});

describe('fewestChanges', () => {
  const HARPS = (['C', 'D', 'A', 'G'] as const).map((key) => makeHarp(key));
  const [BASE] = pickHarps('G', { own: HARPS.slice(0, 1) });

  type Way = readonly HarpPick[];

  const changesOf = (way: Way): number =>
    way.filter((pick, index) => index > 0 && way[index - 1]?.harp !== pick.harp).length;
  const weightOf = (way: Way): number => way.reduce((sum, { weight }) => sum + weight, 0);

  /** Changes and weight of the best of all ways through the choices, tried one by one. */
  function bestByTrying(choices: readonly Way[]): readonly [number, number] {
    const ways = choices.reduce<readonly Way[]>(
      (begun, picks) => begun.flatMap((way) => picks.map((pick) => [...way, pick])),
      [[]],
    );
    const fewest = Math.min(...ways.map(changesOf));
    const kept = ways.filter((way) => changesOf(way) === fewest);
    return [fewest, Math.max(...kept.map(weightOf))];
  }

  it('is never beaten by any other way through the songs', () => {
    const song = fc
      .array(fc.integer({ min: 0, max: 8 }), { minLength: HARPS.length, maxLength: HARPS.length })
      .filter((weights) => weights.some((weight) => weight > 0));
    fc.assert(
      fc.property(fc.array(song, { minLength: 1, maxLength: 6 }), (songs) => {
        const choices = songs.map((weights) =>
          HARPS.flatMap((one, index): HarpPick[] => {
            const weight = weights[index] ?? 0;
            // Weights in eighths add up exactly.
            return weight === 0 ? [] : [{ ...(BASE as HarpPick), harp: one, weight: weight / 8 }];
          }),
        );
        const path = fewestChanges(choices);
        expect([changesOf(path), weightOf(path)]).toEqual(bestByTrying(choices));
        expect(path.every((pick, index) => choices[index]?.includes(pick))).toBe(true);
      }),
    );
  });

  it('takes the first of ways that are as good', () => {
    const alike = HARPS.map((one) => ({ ...(BASE as HarpPick), harp: one }));
    expect(fewestChanges([alike, alike]).map(({ harp }) => harp)).toEqual([HARPS[0], HARPS[0]]);
  });

  it('planSetList changes less often the less is asked of a harp', () => {
    const songs = fc.array(fc.record({ key: keyName }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(songs, (set) => {
        const changes = [1, 0.9, 0.8, 0].map(
          (leastShare) => planSetList(set, { leastShare }).changes,
        );
        expect(changes).toEqual([...changes].sort((a, b) => b - a));
        expect(changes.at(-1)).toBe(0);
      }),
      { numRuns: 30 },
    );
  });
});
