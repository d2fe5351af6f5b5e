import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { Ajv } from 'ajv';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { harp, tuning } from '../test/arbitraries.js';
import {
  makeHarp,
  readHarp,
  readScala,
  readTuning,
  retuningPlan,
  TEMPERAMENTS,
  tuningById,
} from './index.js';

function validator(name: string) {
  const file = fileURLToPath(new URL(`../schemas/${name}.json`, import.meta.url));
  return new Ajv({ strict: true, allowUnionTypes: true }).compile(
    JSON.parse(readFileSync(file, 'utf8')),
  );
}

describe('the schemas of layout', () => {
  it('tuning.json describes any tuning, and readTuning accepts what it accepts', () => {
    const isTuning = validator('tuning');
    fc.assert(
      fc.property(tuning, (any) => {
        expect(isTuning(any), JSON.stringify(isTuning.errors)).toBe(true);
        expect(readTuning(any)).toEqual(any);
      }),
    );
  });

  it.each([
    { id: 'Two Words' },
    { label: 'H' },
    { labelPosition: 3 },
    { holes: [] },
    { holes: [{ hole: 1, blow: 60.5, draw: 62 }] },
    { holes: [{ hole: 1, blow: 1, draw: 62 }] },
    { holes: [{ hole: 17, blow: 60, draw: 62 }] },
    { colour: 'green' },
  ])('tuning.json refuses a tuning with %j', (wrong) => {
    const isTuning = validator('tuning');
    expect(isTuning({ ...tuningById('standard'), ...wrong })).toBe(false);
  });

  it('harp.json describes any harp, and readHarp accepts what it accepts', () => {
    const isHarp = validator('harp');
    fc.assert(
      fc.property(harp, (any) => {
        expect(isHarp(any), JSON.stringify(isHarp.errors)).toBe(true);
        expect(readHarp(any)).toEqual(any);
      }),
    );
    expect(isHarp({ ...makeHarp('C'), register: 'tenor' })).toBe(false);
    expect(isHarp({ ...makeHarp('C'), firstPosition: 'Cm' })).toBe(false);
  });

  it('temperament.json describes the catalogue and what readScala gives', () => {
    const isTemperament = validator('temperament');
    const all = [...TEMPERAMENTS, readScala('triad\n3\n5/4\n3/2\n2/1')];
    for (const one of all)
      expect(isTemperament(one), JSON.stringify(isTemperament.errors)).toBe(true);
    expect(isTemperament({ ...all[0], cents: [0] })).toBe(false);
  });

  it('retuning-plan.json describes any plan', () => {
    const isPlan = validator('retuning-plan');
    const plan = retuningPlan(makeHarp('C'), makeHarp('Gm', { tuning: 'natural-minor' }));
    expect(isPlan(plan), JSON.stringify(isPlan.errors)).toBe(true);
    expect(isPlan({ ...plan, steps: [{ ...plan.steps[0], remedy: 'hope' }] })).toBe(false);
  });
});
