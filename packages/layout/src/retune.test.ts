import { describe, expect, it } from 'vitest';
import {
  makeHarp,
  RETUNING_CAUTIONS,
  type RetuningStep,
  retuningPlan,
  type TuningName,
  temperamentById,
  transposeHarp,
} from './index.js';

const worked = ({ steps }: { steps: readonly RetuningStep[] }) =>
  steps
    .filter(({ remedy }) => remedy !== 'leave')
    .map(({ hole, breath, cents, remedy }) => `${hole} ${breath} ${Math.round(cents)} ${remedy}`);

describe('retuningPlan', () => {
  it('lists every reed, and leaves those alone that stay', () => {
    const plan = retuningPlan(makeHarp('C'), makeHarp('C'));
    expect(plan.steps).toHaveLength(20);
    expect(worked(plan)).toEqual([]);
  });

  it('files, weights or replaces by how far a reed must go (common practice, no source)', () => {
    const third = makeHarp('C', { tuning: 'lowered-second-and-third-draw' });
    expect(worked(retuningPlan(makeHarp('C'), third))).toEqual([
      '2 draw -200 weight-tip',
      '3 draw -200 weight-tip',
    ]);
    const minor = makeHarp('Gm', { tuning: 'natural-minor' });
    expect(worked(retuningPlan(makeHarp('C'), minor))).toContain('3 draw -100 file-base');
    const raised = transposeHarp(makeHarp('C'), 3);
    expect(worked(retuningPlan(makeHarp('C'), raised))).toContain('1 blow 300 replace');
  });

  it('takes another bound for what a reed bears', () => {
    const raised = makeHarp('C', { tuning: 'raised-third-blow' });
    expect(worked(retuningPlan(makeHarp('C'), raised))).toEqual(['3 blow 200 file-tip']);
    expect(worked(retuningPlan(makeHarp('C'), raised, { mostCents: 199 }))).toEqual([
      '3 blow 200 replace',
    ]);
  });

  it('plans a change of temperament alone', () => {
    const options = { fromTemperament: 'equal', toTemperament: 'seven-limit' } as const;
    const plan = retuningPlan(makeHarp('C'), makeHarp('C'), options);
    expect(worked(plan)).toContain('5 draw -29 file-base');
    expect(worked(plan)).toContain('2 blow -14 file-base');
    expect(worked(plan)).not.toContain('1 blow 0 leave');
  });

  it('keeps the temperament the harp has, where no other is asked for', () => {
    const plan = retuningPlan(makeHarp('C'), makeHarp('C', { tuning: 'raised-third-blow' }), {
      fromTemperament: 'five-limit',
    });
    expect(worked(plan)).toHaveLength(1);
  });

  it('takes temperaments of one’s own, and files what a reed is off by a cent', () => {
    const cents = [0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0];
    const own = { ...temperamentById('equal'), id: 'cent', cents };
    const known = { temperaments: [own] };
    const flat = makeHarp('Db');
    const plan = retuningPlan(flat, flat, { toTemperament: 'cent', known });
    expect(worked(plan)).toEqual([]);
    const third = { ...own, cents: [0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0] };
    const options = { toTemperament: 'cent', known: { temperaments: [third] } } as const;
    expect(worked(retuningPlan(flat, flat, options))).toEqual([
      '2 blow 1 file-tip',
      '5 blow 1 file-tip',
      '8 blow 1 file-tip',
    ]);
    expect(() => retuningPlan(flat, flat, { toTemperament: 'cent' })).toThrow(
      expect.objectContaining({ code: 'TEMPERAMENT_UNKNOWN' }),
    );
  });

  it('replaces every reed that changes where none bears anything', () => {
    const raised = makeHarp('C', { tuning: 'raised-third-blow' });
    const plan = retuningPlan(makeHarp('C'), raised, { mostCents: 0 });
    expect(worked(plan)).toEqual(['3 blow 200 replace']);
  });

  it('has the cautions once each, and what they must say', () => {
    const cautions = RETUNING_CAUTIONS.map(({ text }) => text);
    expect(new Set(cautions).size).toBe(cautions.length);
    for (const word of [
      'lead-free',
      'ventilated',
      'eye protection',
      'iron',
      'dust',
      'technician',
    ]) {
      expect(cautions.join(' ')).toContain(word);
    }
  });

  it('warns of soldering where a reed is weighted, and of filing where one is filed', () => {
    const cautionsTo = (tuning: TuningName, mostCents = 200) =>
      retuningPlan(makeHarp('C'), makeHarp('C', { tuning }), { mostCents }).cautions.join(' ');
    const filed = cautionsTo('raised-fifth-draw');
    expect(filed).toMatch(/eye protection.*[Ff]iling dust.*technician/u);
    expect(filed).not.toMatch(/solder/u);
    const weighted = cautionsTo('lowered-second-and-third-draw');
    expect(weighted).toMatch(/lead-free.*ventilated.*iron.*eye protection/u);
    expect(weighted).not.toMatch(/dust/u);
    const replaced = cautionsTo('raised-third-blow', 100);
    expect(replaced).toBe(
      'Wear eye protection at the bench. Where in doubt, leave it to a repair technician.',
    );
    expect(cautionsTo('standard')).toBe('');
  });

  it('throws HARP_INVALID for another number of holes, NUMBER_RANGE for a wrong bound', () => {
    const twelve = makeHarp('C', { tuning: 'solo-twelve' });
    expect(() => retuningPlan(makeHarp('C'), twelve)).toThrow(
      expect.objectContaining({ code: 'HARP_INVALID', value: 12 }),
    );
    expect(() => retuningPlan(makeHarp('C'), makeHarp('D'), { mostCents: -1 })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});
