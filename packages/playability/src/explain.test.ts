import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { models, smallCases } from './arbitraries.fixture.js';
import { everyWay } from './brute-force.fixture.js';
import { EFFORT_TERMS, explainPath, PATH_OBJECTIVES } from './index.js';

vi.setConfig({ testTimeout: 60_000 });

const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + value, 0);
const thousandths = (points: number): number => Math.round(points * 1000);

describe('explainPath', () => {
  test('explainPath: terms and steps add up to the effort, exactly', () => {
    fc.assert(
      fc.property(
        smallCases,
        models,
        fc.constantFrom(...PATH_OBJECTIVES),
        ([line, harp], model, objective) => {
          const found = explainPath(line, harp, { model, level: 'overbends', objective });
          if (!found.playable) return;
          const effort = thousandths(found.path.effort);
          expect(sum(Object.values(found.terms).map(thousandths))).toBe(effort);
          expect(sum(found.steps.map((step) => thousandths(step.effort)))).toBe(effort);
          expect(Math.max(...found.steps.map((step) => step.effort))).toBe(found.path.worst);
          for (const { terms, effort: whole } of found.steps) {
            expect(sum(Object.values(terms).map(thousandths))).toBe(thousandths(whole));
          }
        },
      ),
    );
  });

  test('explainPath: what another way costs more is what the best of all ways through it costs more', () => {
    let others = 0;
    fc.assert(
      fc.property(smallCases, models, ([line, harp], model) => {
        const all = everyWay(line, harp, model, { level: 'overbends' });
        const found = explainPath(line, harp, { model, level: 'overbends' });
        if (!found.playable) return;
        for (const [at, step] of found.steps.entries()) {
          for (const other of step.others) {
            others += 1;
            const through = all.find(
              ({ grips }) => JSON.stringify(grips[at]) === JSON.stringify(other.soundings),
            );
            expect(thousandths(other.more)).toBe((through?.total ?? NaN) - (all[0]?.total ?? NaN));
          }
          const grips = new Set(all.map((way) => JSON.stringify(way.grips[at])));
          expect(step.others.length).toBe(grips.size - 1);
        }
      }),
      { numRuns: 200 },
    );
    expect(others).toBeGreaterThan(100);
  });

  const harp = makeHarp('C');
  const quarters = (...pitches: number[]) =>
    makeLine(
      pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
      { tempo: 60 },
    );

  function explained(...pitches: number[]) {
    const found = explainPath(quarters(...pitches), harp, { level: 'overbends' });
    if (!found.playable) throw new Error('not playable');
    return found;
  }

  test('explainPath names every term of a line that has them all', () => {
    const line = makeLine(
      [
        { start: 0, duration: 240, pitch: 61 },
        { start: 240, duration: 240, pitch: 96 },
        { start: 480, duration: 960, pitch: 96 },
        { start: 1440, duration: 960, pitch: 60 },
        { start: 1440, duration: 960, pitch: 67 },
        { start: 2400, duration: 960 * 12, pitch: 62 },
      ],
      { tempo: 60 },
    );
    const found = explainPath(line, harp);
    expect(found.playable && Object.keys(found.terms)).toEqual([...EFFORT_TERMS]);
  });

  test('explainPath tells the only way from the easier one', () => {
    const { steps } = explained(67, 69, 72);
    expect(steps.map(({ reason }) => reason)).toEqual(['easier', 'only-way', 'easier']);
    expect(steps[0]?.others[0]?.soundings[0]).toMatchObject({ hole: 2, breath: 'draw' });
  });

  test('explainPath tells where an equal stands later in order', () => {
    const solo = makeHarp('C', { tuning: 'solo-ten' });
    const found = explainPath(quarters(72), solo);
    expect(found.playable && found.steps[0]?.reason).toBe('first-of-equals');
  });

  test('explainPath follows the air in the lungs', () => {
    expect(explained(62, 62, 60).steps.map(({ air }) => air)).toEqual([1, 2, 1]);
  });

  test('explainPath places each event in its bar', () => {
    const { steps } = explained(60, 62, 64, 65, 67);
    expect(steps.at(-1)).toMatchObject({ bar: 2, beat: 1, start: 3840, duration: 960 });
  });

  test('explainPath says where a line is not playable', () => {
    expect(explainPath(quarters(40), harp)).toMatchObject({ playable: false, missing: 1 });
  });
});
