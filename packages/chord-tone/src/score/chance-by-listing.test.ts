import { makeChart, parseForm } from '@reedplate/form';
import { type Line, makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyTonic } from '../arbitraries.fixture.js';
import { scoreLine } from './score-line.js';
import { SCORE_WEIGHTS } from './weights.js';

/** The fit alone, on a scale that changes nothing. */
const FIT_ALONE = {
  chanceShare: 0,
  enoughPlayed: 0,
  measures: { ...SCORE_WEIGHTS.measures, landing: 0, coverage: 0 },
  calibration: [
    { raw: 0, total: 0 },
    { raw: 1, total: 1 },
  ],
} as const;

/** Notes with rests between, so that no two of them can tie whatever their pitches are. */
const anyTakes = fc.array(
  fc.record({
    wait: fc.integer({ min: 1, max: 900 }),
    duration: fc.integer({ min: 50, max: 900 }),
    pitch: fc.integer({ min: 60, max: 72 }),
  }),
  { minLength: 1, maxLength: 6 },
);

function lineOf(takes: readonly { wait: number; duration: number; pitch: number }[]): Line {
  let at = 0;
  const notes = takes.map(({ wait, duration, pitch }) => {
    const start = at + wait;
    at = start + duration;
    return { start, duration, pitch };
  });
  return makeLine(notes);
}

describe('chance of scoreLine by listing', () => {
  it('chance of scoreLine is the mean over every pitch drawn for a note and for the one after it', () => {
    const anyForm = fc.constantFrom('| I7 | IV7 |', '| i | V7 |', '| I7 IV7 | V7 |', '| I13 |');
    fc.assert(
      fc.property(anyTakes, anyForm, anyTonic, (takes, form, key) => {
        const chart = makeChart(parseForm(form), key);
        const options = { swing: 1, weights: FIT_ALONE } as const;
        const { notes, chance } = scoreLine(lineOf(takes), chart, options);
        const all = notes.reduce((sum, { weight }) => sum + weight, 0);
        const shares = takes.map(
          (_, at) =>
            notes.reduce((sum, note) => sum + (note.index === at ? note.weight : 0), 0) / all,
        );
        const creditOf = (place: number, one: number, next: number): number => {
          const drawn = takes.map((take, at) => {
            const from = at === notes[place]?.index ? one : next;
            return { ...take, pitch: takes[from]?.pitch ?? 0 };
          });
          return scoreLine(lineOf(drawn), chart, options).notes[place]?.credit ?? Number.NaN;
        };
        const mean = notes.reduce((sum, { weight }, place) => {
          let expected = 0;
          takes.forEach((_, one) => {
            takes.forEach((__, next) => {
              expected += (shares[one] ?? 0) * (shares[next] ?? 0) * creditOf(place, one, next);
            });
          });
          return sum + (weight / all) * expected;
        }, 0);
        expect(chance).toBeCloseTo(mean, 9);
      }),
      { numRuns: 30 },
    );
  });
});
