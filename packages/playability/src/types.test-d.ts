import { makeHarp, type Sounding } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { expectTypeOf, test } from 'vitest';
import {
  bestPath,
  type EFFORT_TERMS,
  type EFFORT_WEIGHTS,
  type EffortTerm,
  type EffortWeightId,
  type EffortWeights,
  type HarpFit,
  type LinePath,
  makeEffortModel,
  type NotPlayable,
  fitHarps as rankHarps,
  type TermEfforts,
} from './index.js';

const line = makeLine([]);
const harp = makeHarp('C');

test('a path is known to be one by its field playable', () => {
  const found = bestPath(line, harp);
  expectTypeOf(found).toEqualTypeOf<LinePath | NotPlayable>();
  if (found.playable) expectTypeOf(found).toEqualTypeOf<LinePath>();
  else expectTypeOf(found).toEqualTypeOf<NotPlayable>();
});

test('what sounds at an event has at least one sounding', () => {
  expectTypeOf<LinePath['soundings'][number][0]>().toEqualTypeOf<Sounding>();
});

test('weights and terms are literal unions', () => {
  expectTypeOf<keyof EffortWeights>().toEqualTypeOf<EffortWeightId>();
  expectTypeOf<(typeof EFFORT_WEIGHTS)[number]['id']>().toEqualTypeOf<EffortWeightId>();
  expectTypeOf<(typeof EFFORT_TERMS)[number]>().toEqualTypeOf<EffortTerm>();
  expectTypeOf<keyof TermEfforts>().toEqualTypeOf<EffortTerm>();
});

test('results are read-only', () => {
  expectTypeOf<LinePath>().toEqualTypeOf<Readonly<LinePath>>();
  expectTypeOf<HarpFit>().toEqualTypeOf<Readonly<HarpFit>>();
  expectTypeOf<EffortWeights>().toEqualTypeOf<Readonly<EffortWeights>>();
});

test('misuse does not compile', () => {
  // @ts-expect-error no such level
  bestPath(line, harp, { level: 'bend' });
  // @ts-expect-error no such objective
  bestPath(line, harp, { objective: 'sum' });
  // @ts-expect-error a ranking has no objective of its own
  rankHarps(line, [harp], { objective: 'worst' });
  // @ts-expect-error no such weight
  makeEffortModel('advanced', { weights: { raech: 1 } });
});
