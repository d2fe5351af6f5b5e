import { midi, parseKey, toPitchClass } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyTuning, harp, level, register, tonic, tuning } from '../test/arbitraries.js';
import {
  type Breath,
  chordIntonation,
  editTuning,
  type Harp,
  harpName,
  harpRange,
  makeHarp,
  makeTuning,
  missingPitches,
  nameOnHarp,
  nearestRatio,
  parseHarp,
  ratioCents,
  readHarp,
  readScala,
  readTuning,
  reedsOf,
  reedsSounding,
  retuningPlan,
  type Sounding,
  soundings,
  soundingsAt,
  soundingsOfPitch,
  TEMPERAMENTS,
  TUNINGS,
  temperHarp,
  transposeHarp,
} from './index.js';

const breath = fc.constantFrom<Breath>('blow', 'draw');
const valved = fc.boolean();
const viaJson = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

/** A harp with room for a move within its registers, and the move. */
const moved = fc
  .tuple(harp, fc.integer({ min: -12, max: 12 }))
  .map(([from, by]): [Harp, Harp, number] => [from, transposeHarp(from, by), by]);

describe('soundings', () => {
  it('moves with the harp: every pitch by the same semitones, and nothing else', () => {
    fc.assert(
      fc.property(moved, level, valved, ([from, to, by], able, isValved) => {
        const options = { level: able, valved: isValved };
        const expected = soundings(from, options).map((s) => ({ ...s, pitch: s.pitch + by }));
        expect(soundings(to, options)).toEqual(expected);
      }),
    );
  });

  it('bends strictly between the two reeds of the hole, every semitone once', () => {
    fc.assert(
      fc.property(harp, (any) => {
        for (const { hole, blow, draw } of any.holes) {
          const bends = (['blow', 'draw'] as const).flatMap((way) =>
            soundingsAt(any, hole, way).filter(({ technique }) => technique === 'bend'),
          );
          const pitches = bends.map(({ pitch }) => pitch).sort((a, b) => a - b);
          const between = Math.max(0, Math.abs(blow - draw) - 1);
          const first = Math.min(blow, draw) + 1;
          expect(pitches).toEqual(Array.from({ length: between }, (_, step) => first + step));
        }
      }),
    );
  });

  it('overbends one semitone above the higher reed, on the breath of the lower', () => {
    fc.assert(
      fc.property(harp, (any) => {
        for (const sounding of soundings(any)) {
          if (sounding.technique !== 'overblow' && sounding.technique !== 'overdraw') continue;
          const reeds = any.holes[sounding.hole - 1];
          const own = reeds?.[sounding.breath] ?? 0;
          expect(sounding.pitch).toBe(Math.max(reeds?.blow ?? 0, reeds?.draw ?? 0) + 1);
          expect(own).toBe(Math.min(reeds?.blow ?? 0, reeds?.draw ?? 0));
          expect(reedsSounding(sounding)).not.toContain(sounding.breath);
        }
      }),
    );
  });

  it('only ever adds from one level to the next', () => {
    fc.assert(
      fc.property(harp, valved, (any, isValved) => {
        const at = (able: 'natural' | 'bends' | 'overbends') =>
          new Set(soundings(any, { level: able, valved: isValved }).map((s) => JSON.stringify(s)));
        expect(isWithin(at('natural'), at('bends'))).toBe(true);
        expect(isWithin(at('bends'), at('overbends'))).toBe(true);
      }),
    );
  });

  it('puts unbent notes first, with depth 0 exactly for them', () => {
    fc.assert(
      fc.property(harp, breath, (any, way) => {
        for (const { hole, ...reeds } of any.holes) {
          const [natural, ...others] = soundingsAt(any, hole, way);
          expect(natural).toMatchObject({ technique: 'natural', depth: 0, pitch: reeds[way] });
          expect(others.every(({ technique, depth }) => technique !== 'natural' && depth > 0)).toBe(
            true,
          );
        }
      }),
    );
  });
});

function isWithin(part: ReadonlySet<string>, whole: ReadonlySet<string>): boolean {
  return [...part].every((value) => whole.has(value));
}

describe('lookups', () => {
  it('soundingsOfPitch finds soundings of that pitch only, and every sounding is found', () => {
    fc.assert(
      fc.property(harp, level, valved, (any, able, isValved) => {
        const options = { level: able, valved: isValved };
        const found: Sounding[] = [];
        for (let pitch = 0; pitch <= 127; pitch += 1) {
          const alike = soundingsOfPitch(any, pitch, options);
          expect(alike.every((sounding) => sounding.pitch === pitch)).toBe(true);
          found.push(...alike);
        }
        const all = soundings(any, options);
        expect(found).toHaveLength(all.length);
        expect(new Set(found)).toEqual(new Set(all));
      }),
    );
  });

  it('soundingsAt over all holes and breaths gives soundings', () => {
    fc.assert(
      fc.property(harp, level, (any, able) => {
        const each = any.holes.flatMap(({ hole }) =>
          (['blow', 'draw'] as const).flatMap((way) =>
            soundingsAt(any, hole, way, { level: able }),
          ),
        );
        expect(each).toEqual(soundings(any, { level: able }));
      }),
    );
  });

  it('missingPitches and the pitches of soundings share out the range', () => {
    fc.assert(
      fc.property(harp, level, (any, able) => {
        const { lowest, highest } = harpRange(any);
        const sounded = new Set(
          soundings(any, { level: able })
            .map(({ pitch }) => pitch)
            .filter((pitch) => pitch >= lowest && pitch <= highest),
        );
        const missing = missingPitches(any, { level: able });
        expect(missing.some((pitch) => sounded.has(pitch))).toBe(false);
        expect(missing.length + sounded.size).toBe(highest - lowest + 1);
      }),
    );
  });
});

describe('harps', () => {
  it('transposeHarp by k and then by l is transposeHarp by k + l, and back is the same harp', () => {
    fc.assert(
      fc.property(
        tuning,
        fc.integer({ min: -6, max: 6 }),
        fc.integer({ min: -6, max: 6 }),
        (any, k, l) => {
          // Harps in the plain spelling, which transposing gives.
          const from = transposeHarp(transposeHarp(makeHarp('D', { tuning: any }), 1), 1);
          expect(transposeHarp(transposeHarp(from, k), l)).toEqual(transposeHarp(from, k + l));
          expect(transposeHarp(transposeHarp(from, k), -k)).toEqual(from);
        },
      ),
    );
  });

  it('transposeHarp gives what makeHarp makes in that key and register', () => {
    fc.assert(
      fc.property(moved, ([from, to]) => {
        const made = TUNINGS.find(({ id }) => id === from.tuning);
        fc.pre(made !== undefined && to.key !== from.key);
        expect(to).toEqual(makeHarp(to.key, { tuning: to.tuning, register: to.register }));
      }),
    );
  });

  it('makeHarp keeps first position from G up to F# in the standard register', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TUNINGS), tonic, (any, key) => {
        const made = makeHarp(key, { tuning: any });
        const shift = (made.holes[0]?.blow ?? 0) - (any.holes[0]?.blow ?? 0);
        expect(shift).toBeGreaterThanOrEqual(-11);
        expect(shift).toBeLessThanOrEqual(11);
        const home = parseKey(made.firstPosition).pitchClass;
        const label = parseKey(made.key).pitchClass;
        expect(toPitchClass(label - home)).toBe(any.labelPosition === 2 ? 7 : 0);
      }),
    );
  });

  it('makeHarp moves by whole octaves between registers', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TUNINGS), tonic, register, (any, key, other) => {
        const octaves = { 'low-low': -2, low: -1, standard: 0, high: 1 }[other];
        const standard = makeHarp(key, { tuning: any });
        const there = makeHarp(key, { tuning: any, register: other });
        const expected = standard.holes.map(({ hole, blow, draw }) => ({
          hole,
          blow: blow + 12 * octaves,
          draw: draw + 12 * octaves,
        }));
        expect(there.holes).toEqual(expected);
      }),
    );
  });

  it('spelling never changes pitch: enharmonic keys make the same reeds', () => {
    fc.assert(
      fc.property(tuning, tonic, tonic, (any, one, other) => {
        fc.pre(parseKey(one).pitchClass === parseKey(other).pitchClass);
        expect(makeHarp(one, { tuning: any }).holes).toEqual(
          makeHarp(other, { tuning: any }).holes,
        );
      }),
      { numRuns: 50 },
    );
  });

  it('reedsOf and nameOnHarp name the pitch that sounds', () => {
    fc.assert(
      fc.property(harp, (any) => {
        for (const { name, pitch } of reedsOf(any)) expect(midi(name)).toBe(pitch);
        for (const { pitch } of soundings(any)) expect(midi(nameOnHarp(any, pitch))).toBe(pitch);
      }),
    );
  });

  it('harpName and parseHarp are inverse for the catalogue', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TUNINGS), tonic, register, (any, key, where) => {
        const made = makeHarp(key, { tuning: any, register: where });
        expect(parseHarp(harpName(made))).toEqual(made);
      }),
    );
  });
});

describe('JSON', () => {
  it('readTuning and readHarp give back what was written', () => {
    fc.assert(
      fc.property(tuning, harp, (anyOne, any) => {
        expect(readTuning(viaJson(anyOne))).toEqual(anyOne);
        expect(readHarp(viaJson(any))).toEqual(any);
      }),
    );
  });

  it('a harp from JSON sounds alike, read or not', () => {
    fc.assert(
      fc.property(harp, level, (any, able) => {
        const plain = viaJson(any) as Harp;
        expect(soundings(plain, { level: able })).toEqual(soundings(any, { level: able }));
      }),
    );
  });
});

describe('editTuning', () => {
  it('raising reeds equals building from the raised rows', () => {
    const edits = fc.array(
      fc.record({ at: fc.nat(), breath, by: fc.integer({ min: -5, max: 5 }) }),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(anyTuning, edits, (from, wanted) => {
        const rows = {
          blow: from.holes.map(({ blow }) => blow),
          draw: from.holes.map(({ draw }) => draw),
        };
        const applied = wanted.map(({ at, breath: way, by }) => {
          const index = at % from.holes.length;
          rows[way][index] = (rows[way][index] ?? 0) + by;
          return { hole: from.holes[index]?.hole ?? 1, breath: way, by };
        });
        const { label, labelPosition } = from;
        const built = makeTuning({ id: 'built', label, labelPosition, ...rows });
        expect(editTuning(from, applied, { id: 'built' })).toEqual(built);
      }),
    );
  });

  it('undoes an edit by its opposite', () => {
    fc.assert(
      fc.property(anyTuning, breath, fc.integer({ min: -9, max: 9 }), (from, way, by) => {
        const there = editTuning(from, [{ hole: 1, breath: way, by }], { id: 'there' });
        const back = editTuning(there, [{ hole: 1, breath: way, by: -by }], { id: 'back' });
        expect(back.holes).toEqual(from.holes);
      }),
    );
  });
});

describe('retuningPlan', () => {
  const temperament = fc.constantFrom(...TEMPERAMENTS);

  it('from A to B and back to A adds up to zero for every reed', () => {
    const pair = fc.constantFrom(...TUNINGS.filter(({ holes }) => holes.length === 10));
    fc.assert(
      fc.property(pair, pair, temperament, temperament, (a, b, one, other) => {
        const [from, to] = [makeHarp('C', { tuning: a }), makeHarp('C', { tuning: b })];
        const there = retuningPlan(from, to, { fromTemperament: one, toTemperament: other });
        const back = retuningPlan(to, from, { fromTemperament: other, toTemperament: one });
        for (const [index, step] of there.steps.entries()) {
          expect(step.cents + (back.steps[index]?.cents ?? Number.NaN)).toBeCloseTo(0, 9);
        }
      }),
    );
  });

  it('to the same harp leaves every reed', () => {
    fc.assert(
      fc.property(harp, temperament, (any, one) => {
        const { steps } = retuningPlan(any, any, { fromTemperament: one });
        expect(steps.every(({ remedy, cents }) => remedy === 'leave' && cents === 0)).toBe(true);
      }),
    );
  });
});

describe('temperament', () => {
  const temperament = fc.constantFrom(...TEMPERAMENTS);

  it('temperHarp puts each reed the stated cents from equal temperament', () => {
    fc.assert(
      fc.property(harp, temperament, fc.integer({ min: 400, max: 480 }), (any, how, a4) => {
        const equal = temperHarp(any, 'equal', { a4 }).reeds;
        for (const [index, reed] of temperHarp(any, how, { a4 }).reeds.entries()) {
          const cents = 1200 * Math.log2(reed.frequency / (equal[index]?.frequency ?? 0));
          expect(cents).toBeCloseTo(reed.cents, 6);
        }
      }),
    );
  });

  it('temperHarp does not depend on the key: the same cents for every harp of a tuning', () => {
    fc.assert(
      fc.property(moved, temperament, ([from, to], how) => {
        const cents = (any: Harp) => temperHarp(any, how).reeds.map((reed) => reed.cents);
        expect(cents(to)).toEqual(cents(from));
      }),
    );
  });

  it('chordIntonation in proportions of the frequencies themselves does not beat', () => {
    const proportions = fc.uniqueArray(fc.integer({ min: 2, max: 24 }), {
      minLength: 2,
      maxLength: 4,
    });
    fc.assert(
      fc.property(proportions, (unsorted) => {
        const parts = [...unsorted].sort((a, b) => a - b);
        const pitches = parts.map((part) => 48 + 12 * Math.log2(part / (parts[0] ?? 1)));
        const rounded = pitches.map(Math.round);
        fc.pre(new Set(rounded).size === rounded.length);
        const chord = makeHarp('C', {
          tuning: makeTuning({ id: 'just', blow: rounded, draw: rounded }),
        });
        const cents = pitches.map((pitch, index) => 100 * (pitch - (rounded[index] ?? 0)));
        const tuned = temperHarp(chord, { blow: cents, draw: cents });
        const holes = parts.map((_, index) => index + 1);
        for (const { beats, deviation } of chordIntonation(tuned, holes, 'blow', {
          proportions: parts,
        }).intervals) {
          expect(beats).toBeCloseTo(0, 6);
          expect(deviation).toBeCloseTo(0, 6);
        }
      }),
    );
  });

  it('nearestRatio finds a simple ratio again from its own cents', () => {
    const part = fc.constantFrom(1, 2, 3, 4, 5, 6, 7, 8);
    fc.assert(
      fc.property(part, part, (a, b) => {
        const cents = ratioCents({ numerator: Math.max(a, b), denominator: Math.min(a, b) });
        expect(ratioCents(nearestRatio(cents))).toBeCloseTo(cents, 9);
      }),
    );
  });

  it('readScala reads back any temperament written as cents', () => {
    const cents = fc.array(fc.integer({ min: -45, max: 45 }), { minLength: 11, maxLength: 11 });
    fc.assert(
      fc.property(cents, (deviations) => {
        const pitches = deviations.map((deviation, index) => `${100 * (index + 1) + deviation}.0`);
        const read = readScala(['any', '12', ...pitches, '2/1'].join('\n'));
        for (const [index, deviation] of deviations.entries()) {
          const nearestIsOwn = deviations.every(
            (other, at) =>
              at === index || Math.abs(100 * (at - index) + other) > Math.abs(deviation),
          );
          if (nearestIsOwn) expect(read.cents[index + 1]).toBeCloseTo(deviation, 9);
        }
      }),
    );
  });

  it('readScala throws only SCALA_SYNTAX, whatever the text', () => {
    fc.assert(
      fc.property(
        fc.string({ unit: fc.constantFrom('!', '\n', '1', '2', '/', '.', ' ', 'x', '-') }),
        (text) => {
          try {
            expect(readScala(text).cents).toHaveLength(12);
          } catch (error) {
            expect(error).toMatchObject({ code: 'SCALA_SYNTAX' });
          }
        },
      ),
    );
  });
});
