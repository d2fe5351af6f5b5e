import type { KeyName, Tonic } from '@reedplate/pitch';
import { expectTypeOf, test } from 'vitest';
import {
  type Breath,
  type Harp,
  type Hole,
  type HoleReeds,
  makeHarp,
  type Register,
  type Sounding,
  soundings,
  soundingsAt,
  soundingsOfPitch,
  type Technique,
  type TechniqueLevel,
  type TemperamentId,
  type Tuning,
  type TuningId,
  temperHarp,
} from './index.js';

test('holes, breaths, techniques, levels and registers are literal unions', () => {
  expectTypeOf<Hole>().toExtend<
    1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12 | 13 | 14 | 15 | 16
  >();
  expectTypeOf<Breath>().toEqualTypeOf<'blow' | 'draw'>();
  expectTypeOf<Technique>().toEqualTypeOf<
    'natural' | 'bend' | 'overblow' | 'overdraw' | 'valved-bend'
  >();
  expectTypeOf<TechniqueLevel>().toEqualTypeOf<'natural' | 'bends' | 'overbends'>();
  expectTypeOf<Register>().toEqualTypeOf<'low-low' | 'low' | 'standard' | 'high'>();
});

test('ids of tunings and temperaments are those of the catalogue', () => {
  expectTypeOf<'natural-minor'>().toExtend<TuningId>();
  expectTypeOf<'natural'>().not.toExtend<TuningId>();
  expectTypeOf<'seven-limit'>().toExtend<TemperamentId>();
  expectTypeOf<'just'>().not.toExtend<TemperamentId>();
});

test('public data is read-only throughout', () => {
  expectTypeOf<Harp>().toEqualTypeOf<Readonly<Harp>>();
  expectTypeOf<Harp['holes']>().toEqualTypeOf<readonly HoleReeds[]>();
  expectTypeOf<Tuning>().toEqualTypeOf<Readonly<Tuning>>();
  expectTypeOf(soundings).returns.toEqualTypeOf<readonly Sounding[]>();
  expectTypeOf(soundingsOfPitch).returns.toEqualTypeOf<readonly Sounding[]>();
});

test('a harp is named by a key and played from a tonic', () => {
  expectTypeOf<Harp['key']>().toEqualTypeOf<KeyName>();
  expectTypeOf<Harp['firstPosition']>().toEqualTypeOf<Tonic>();
});

test('misuse does not compile', () => {
  const harp = makeHarp('C');
  // @ts-expect-error no such register
  makeHarp('C', { register: 'tenor' });
  // @ts-expect-error no such breath
  soundingsAt(harp, 1, 'suck');
  // @ts-expect-error no such level
  soundings(harp, { level: 'bend' });
  // @ts-expect-error holes of a half-valved harp are hole numbers
  soundings(harp, { valved: [17] });
  // @ts-expect-error frozen data
  harp.key = 'D';
  // @ts-expect-error both rows are needed
  temperHarp(harp, { blow: [0] });
});
