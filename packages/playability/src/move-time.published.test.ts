import { makeHarp, soundingsAt } from '@reedplate/layout';
import { expect, test } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { type Choice, makeChoice } from './choice.js';
import { figuresOf } from './figures.js';
import { effortModelById } from './index.js';
import { timeNeeded } from './terms.js';

function blow(hole: number): Choice {
  const [natural] = soundingsAt(makeHarp('C'), hole, 'blow');
  if (natural === undefined) throw new Error(`no hole ${hole}`);
  return makeChoice([natural]);
}

published(
  'mackenzie',
  'time of a move: log2((distance + width) / width), here with one hole for width',
  () => {
    const figures = figuresOf(effortModelById('intermediate'));
    const secondsOf = (holes: number): number => timeNeeded(blow(1), blow(1 + holes), figures);

    test.each([
      [1, 1],
      [3, 2],
      [7, 3],
    ])('timeNeeded of a move of %i holes is that of %i bits', (holes, bits) => {
      expect(secondsOf(holes)).toBeCloseTo(bits * figures.moveTime, 6);
    });
  },
);
