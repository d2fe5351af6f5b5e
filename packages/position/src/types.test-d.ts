import type { Key } from '@reedplate/pitch';
import { expectTypeOf, test } from 'vitest';
import {
  type HarpPick,
  type PositionNumber,
  pickHarps,
  planSetList,
  positionOf,
  type RunNote,
  scaleRun,
  songKeyOf,
} from './index.js';

test('positions are the numbers 1 to 12', () => {
  expectTypeOf<PositionNumber>().toEqualTypeOf<1 | 2 | 3 | 4 | 5 | 6 | 7 | 8 | 9 | 10 | 11 | 12>();
  expectTypeOf(positionOf).returns.toEqualTypeOf<PositionNumber>();
  expectTypeOf(songKeyOf).returns.toEqualTypeOf<Key>();
});

test('results are read-only', () => {
  expectTypeOf(pickHarps).returns.toEqualTypeOf<readonly HarpPick[]>();
  expectTypeOf<HarpPick>().toEqualTypeOf<Readonly<HarpPick>>();
  expectTypeOf(scaleRun).returns.toEqualTypeOf<readonly RunNote[]>();
});

test('misuse does not compile', () => {
  // @ts-expect-error no such level
  pickHarps('G', { level: 'bend' });
  // @ts-expect-error harps owned are a list
  pickHarps('G', { own: 'C' });
  // @ts-expect-error a song has a key
  planSetList([{ title: 'Untitled' }]);
});
