import { makeChart } from '@reedplate/form';
import { expect, test } from 'vitest';
import { findPhrases } from '../catalogue/find-phrases.js';
import { composeLine } from './compose-line.js';
import { learnPhrases } from './learn-phrases.js';
import { DEFAULT_MELODY_MODEL, MINOR_MELODY_MODEL, melodyWeight } from './melody-model.js';
import { readWeights } from './read-weights.js';

test.each([
  ['major', DEFAULT_MELODY_MODEL],
  ['minor', MINOR_MELODY_MODEL],
] as const)('the weights in %s are those of the catalogue as it stands', (mode, model) => {
  const learned = learnPhrases(findPhrases(), mode);
  // They are written to a tenth; counts are whole, and a tenth is added to each.
  expect(model.transitions.flat()).toEqual(
    learned.transitions.flat().map((each) => expect.closeTo(each, 5)),
  );
  expect(model.leaps).toEqual(learned.leaps.map((each) => expect.closeTo(each, 5)));
});

test('a song in minor is composed by the model in minor', () => {
  const chart = makeChart('minor', 'Gm');
  const usual = composeLine(chart, 'C', { seed: 5 });
  expect(composeLine(chart, 'C', { seed: 5, model: MINOR_MELODY_MODEL })).toEqual(usual);
  expect(composeLine(chart, 'C', { seed: 5, model: DEFAULT_MELODY_MODEL })).not.toEqual(usual);
});

test('ways to a degree from below and from above share its weight, and degrees share one', () => {
  const weight = (pitch: number) => melodyWeight(DEFAULT_MELODY_MODEL, 0, 60, pitch);
  const steps = Array.from({ length: 11 }, (_, at) => at + 1);
  // From 60 each of the other degrees is met once above and once below, within an octave.
  const all = steps.reduce((sum, step) => sum + weight(60 + step) + weight(60 - step), 0);
  const same = weight(60) + weight(72);
  expect(all + same).toBeCloseTo(1, 10);
});

test('readWeights reads a line for each row', () => {
  expect(readWeights('\n1 2\n3.5 4\n', '5 6')).toEqual({
    transitions: [
      [1, 2],
      [3.5, 4],
    ],
    leaps: [5, 6],
  });
});
