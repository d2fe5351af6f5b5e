import { makeHarp, type Sounding, soundings } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { afterPlaying, afterRest, airMove, airRate, airTerm } from './air.js';
import { models } from './arbitraries.fixture.js';
import { type Choice, choicesOf, makeChoice } from './choice.js';
import { figuresOf } from './figures.js';
import { effortModelById } from './index.js';
import {
  bendMoveTerm,
  breathTerm,
  chordTerm,
  holdTerm,
  holesMoved,
  hurryTerm,
  reachTerm,
  repeatTerm,
  techniqueTerm,
  timeNeeded,
} from './terms.js';

const C = makeHarp('C');
const ALL = soundings(C, { level: 'overbends' });
const FIGURES = figuresOf(effortModelById('intermediate'));
const choices = fc.constantFrom(...ALL).map((sounding) => makeChoice([sounding]));
const figures = models.map(figuresOf);

/** A choice by hole, breath and depth: 0 natural, 1 and up a bend, `over` an overbend. */
function at(hole: number, breath: string, depth: number | 'over' = 0): Choice {
  const isWanted = (found: Sounding): boolean =>
    depth === 'over'
      ? found.technique.startsWith('over')
      : found.depth === depth && !found.technique.startsWith('over');
  const found = ALL.find(
    (sounding) => sounding.hole === hole && sounding.breath === breath && isWanted(sounding),
  );
  if (found === undefined) throw new Error(`no ${hole} ${breath} ${depth}`);
  return makeChoice([found]);
}

function chord(...pitches: number[]): Choice {
  const [found] = choicesOf(C, pitches, { level: 'natural' });
  if (found === undefined) throw new Error('no grip');
  return found;
}

describe('techniqueTerm', () => {
  // By the intermediate model's figures, in thousandths: bend 4, depth 2, hole 2, blow bend 4.
  test.each([
    [at(4, 'draw'), 0],
    [at(4, 'draw', 1), 4000],
    [at(6, 'draw', 1), 4500],
    [at(3, 'draw', 1), 6000],
    [at(3, 'draw', 3), 10_000],
    [at(8, 'blow', 1), 8500],
    [at(10, 'blow', 2), 11_500],
    [at(6, 'blow', 'over'), 14_000],
    [at(1, 'blow', 'over'), 17_000],
    [at(7, 'draw', 'over'), 21_000],
  ])('techniqueTerm of %j', (choice, cost) => {
    expect(techniqueTerm(choice, FIGURES)).toBe(cost);
  });

  test('techniqueTerm of a valved bend counts its depth and no hole', () => {
    const [half, whole] = [1, 2].map((depth) =>
      makeChoice([{ hole: 1, breath: 'blow', technique: 'valved-bend', depth, pitch: 60 - depth }]),
    );
    expect([half, whole].map((choice) => choice && techniqueTerm(choice, FIGURES))).toEqual([
      5000, 7000,
    ]);
  });

  test('techniqueTerm ranks a hole past the end of a list as the last one listed', () => {
    const ranks = { drawBend: [0, 1], blowBend: [0], overbend: [0] };
    expect(techniqueTerm(at(3, 'draw', 1), { ...FIGURES, holeRanks: ranks })).toBe(6000);
  });
});

describe('chordTerm and choicesOf', () => {
  test.each([
    [[60], 0],
    [[60, 64], 300],
    [[60, 64, 67], 600],
    [[60, 67], 1800],
    [[60, 72], 1800],
    [[60, 67, 76], 300 * 2 + 1500 * 2],
  ])('chordTerm of %j counts holes beyond the first and stretches blocked', (pitches, cost) => {
    expect(chordTerm(chord(...pitches), FIGURES)).toBe(cost);
  });

  test('choicesOf gives no grip wider than five holes or on two breaths', () => {
    expect(choicesOf(C, [60, 79], {})).toEqual([]);
    expect(choicesOf(C, [60, 62], {})).toEqual([]);
  });

  test('choicesOf finds each way where two holes have the same reed', () => {
    const solo = makeHarp('C', { tuning: 'solo-ten' });
    const grips = choicesOf(solo, [67, 72], {}).map(({ soundings: grip }) =>
      grip.map(({ hole }) => hole),
    );
    expect(grips).toEqual([
      [3, 4],
      [3, 5],
    ]);
  });
});

describe('moves', () => {
  test('holesMoved is the distance of holes, and of chords the mean of their two edges', () => {
    expect(holesMoved(at(2, 'draw'), at(5, 'blow'))).toBe(3);
    expect(holesMoved(at(2, 'blow'), chord(60, 64, 67))).toBe(1);
    expect(holesMoved(chord(60, 64), chord(64, 67))).toBe(1);
  });

  test('reachTerm counts every hole, and those beyond the third once more', () => {
    const costs = [1, 2, 4, 6].map((hole) => reachTerm(at(1, 'blow'), at(hole, 'blow'), FIGURES));
    expect(costs).toEqual([0, 1000, 3000, 7000]);
  });

  test('reachTerm never falls with distance', () => {
    const holes = fc.integer({ min: 1, max: 10 });
    fc.assert(
      fc.property(figures, holes, holes, holes, (any, from, a, b) => {
        const cost = (hole: number) => reachTerm(at(from, 'blow'), at(hole, 'blow'), any);
        const [near, far] = Math.abs(a - from) < Math.abs(b - from) ? [a, b] : [b, a];
        expect(cost(near)).toBeLessThanOrEqual(cost(far));
      }),
    );
  });

  test('breathTerm is paid at a breath change and nowhere else', () => {
    fc.assert(
      fc.property(figures, choices, choices, (any, from, to) => {
        const paid = breathTerm(from, to, any);
        expect(paid).toBe(from.breath === to.breath ? 0 : any.cost.breathChange);
      }),
    );
  });

  test.each([
    ['a line that begins bent', null, at(4, 'draw', 1), 1500],
    ['a slide from the clean note', at(4, 'draw'), at(4, 'draw', 1), 500],
    ['a slide from bend to deeper bend', at(3, 'draw', 1), at(3, 'draw', 2), 500],
    ['a bend hit from another hole', at(5, 'draw'), at(4, 'draw', 1), 1500],
    ['a bend hit from another breath', at(4, 'blow'), at(4, 'draw', 1), 1500],
    ['a release within the hole', at(4, 'draw', 1), at(4, 'draw'), 300],
    ['a release to another hole', at(4, 'draw', 1), at(5, 'draw'), 300],
    ['from a bend to a bend elsewhere', at(4, 'draw', 1), at(6, 'draw', 1), 1800],
    ['from blow to an overblow of the hole', at(6, 'blow'), at(6, 'blow', 'over'), 500],
    ['clean notes', at(4, 'draw'), at(5, 'blow'), 0],
  ])('bendMoveTerm of %s', (_, from, to, cost) => {
    expect(bendMoveTerm(from, to, FIGURES)).toBe(cost);
  });

  test('repeatTerm is paid for the very same sounding only', () => {
    expect(repeatTerm(at(4, 'draw'), at(4, 'draw'), FIGURES)).toBe(200);
    expect(repeatTerm(at(2, 'draw'), at(3, 'blow'), FIGURES)).toBe(0);
    expect(repeatTerm(at(4, 'draw'), at(4, 'draw', 1), FIGURES)).toBe(0);
    expect(repeatTerm(chord(60, 64), chord(60, 64), FIGURES)).toBe(200);
    expect(repeatTerm(chord(60, 64), chord(60, 64, 67), FIGURES)).toBe(0);
  });
});

describe('time', () => {
  test('holdTerm grows with the seconds of a bend, and is 0 for an unbent note', () => {
    expect(holdTerm(at(4, 'draw', 1), 1.5, FIGURES)).toBe(3000);
    expect(holdTerm(at(4, 'draw'), 1.5, FIGURES)).toBe(0);
  });

  test('timeNeeded adds the move, the turn and the shaping of a bend', () => {
    expect(timeNeeded(at(4, 'draw'), at(4, 'draw'), FIGURES)).toBe(0);
    expect(timeNeeded(at(4, 'draw'), at(5, 'draw'), FIGURES)).toBe(0.08);
    expect(timeNeeded(at(4, 'draw'), at(7, 'blow'), FIGURES)).toBeCloseTo(0.08 * 2 + 0.06, 6);
    expect(timeNeeded(at(4, 'draw'), at(4, 'draw', 1), FIGURES)).toBe(0);
    expect(timeNeeded(at(4, 'blow'), at(4, 'draw', 1), FIGURES)).toBeCloseTo(0.18, 6);
  });

  test('hurryTerm is 0 with time enough, and the whole weight where half is lacking', () => {
    expect(hurryTerm(0.2, 0.2, FIGURES)).toBe(0);
    expect(hurryTerm(0.2, 0.1, FIGURES)).toBe(4000);
  });

  test('hurryTerm: a longer time never makes a leap harder', () => {
    const seconds = fc.double({ min: 0.01, max: 5, noNaN: true });
    fc.assert(
      fc.property(figures, choices, choices, seconds, seconds, (any, from, to, one, other) => {
        const needed = timeNeeded(from, to, any);
        const slow = hurryTerm(needed, Math.max(one, other), any);
        expect(slow).toBeLessThanOrEqual(hurryTerm(needed, Math.min(one, other), any));
      }),
    );
  });
});

describe('air', () => {
  // The intermediate model: comfort 40 steps, capacity 80, strain 100 and snatch 400 a step.
  test.each([
    ['within comfort', 0, 40, 0],
    ['past comfort', 30, 20, 1000],
    ['further past comfort', 50, 10, 1000],
    ['coming back', 70, -20, 0],
    ['from one side past comfort to the other', 50, -100, 1000],
    ['to the limit', 0, 80, 4000],
    ['past the limit', 0, 90, 8000],
    ['at the limit already', 80, 5, 2000],
    ['blown out as drawn in', -30, -20, 1000],
  ])('airTerm %s', (_, air, move, cost) => {
    expect(airTerm(air, move, FIGURES)).toBe(cost);
  });

  test('afterPlaying keeps air within the lungs; afterRest brings it towards half full, never past', () => {
    const amounts = fc.integer({ min: -80, max: 80 });
    fc.assert(
      fc.property(
        amounts,
        fc.integer({ min: -300, max: 300 }),
        fc.nat({ max: 100 }),
        (air, move, rest) => {
          expect(Math.abs(afterPlaying(air, move, FIGURES))).toBeLessThanOrEqual(80);
          const rested = afterRest(air, rest);
          expect(Math.abs(rested)).toBe(Math.max(0, Math.abs(air) - rest));
          expect(rested * air).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });

  test('airTerm: playing on in parts strains as much as playing on at once, up to the limit', () => {
    const parts = fc.array(fc.integer({ min: 0, max: 20 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(parts, fc.boolean(), (amounts, draws) => {
        const sign = draws ? 1 : -1;
        let air = 0;
        let cost = 0;
        for (const amount of amounts) {
          cost += airTerm(air, sign * amount, FIGURES);
          air = afterPlaying(air, sign * amount, FIGURES);
        }
        const whole = amounts.reduce((sum, amount) => sum + amount, 0);
        expect(cost).toBe(airTerm(0, sign * whole, FIGURES));
      }),
    );
  });

  test('airMove draws in, blows out, and takes a share more for each further hole', () => {
    const moved = (choice: Choice) => airMove(airRate(choice, FIGURES), 10);
    expect(moved(at(4, 'draw'))).toBe(10);
    expect(moved(at(4, 'blow'))).toBe(-10);
    expect(moved(chord(60, 64, 67))).toBe(-18);
  });
});
