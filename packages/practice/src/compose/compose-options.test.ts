import { makeChart } from '@reedplate/form';
import { describe, expect, test } from 'vitest';
import { composeLine } from './compose-line.js';
import type { ComposeOptions } from './compose-options.js';
import { DEFAULT_MELODY_MODEL } from './melody-model.js';

const CHART = makeChart('basic', 'G', { tempo: 88 });
const pitches = (options: ComposeOptions): readonly number[] =>
  [1, 2, 3].flatMap((seed) =>
    composeLine(CHART, 'C', { seed, ...options }).steps.map(({ sounding }) => sounding.pitch),
  );

describe('composeLine takes its options', () => {
  test.each([
    [{ changes: 'yes' }, 'changes', 'true or false'],
    [{ cells: [null] }, 'cells[0]', 'a rhythm of a beat, with notes and a weight'],
    [{ cells: ['half'] }, 'cells[0]', 'a rhythm of a beat, with notes and a weight'],
    [
      { cells: [{ notes: [0.5], weight: 1 }] },
      'cells[0]',
      'a start and a length within the beat, after the note before',
    ],
    [
      { model: { ...DEFAULT_MELODY_MODEL, transitions: 'major' } },
      'model.transitions',
      '12 rows of 12 weights',
    ],
    [{ model: { ...DEFAULT_MELODY_MODEL, leaps: [1, -1] } }, 'model.leaps', 'weights of leaps'],
  ])('refuses %j, and says where and what it wants', (options, path, expected) => {
    expect(() => composeLine(CHART, 'C', options as unknown as ComposeOptions)).toThrow(
      expect.objectContaining({ code: 'COMPOSE_INVALID', expected, where: { path } }),
    );
  });

  test('with one bound of the range given the other is open', () => {
    const above = pitches({ lowest: 79 });
    expect(Math.min(...above)).toBeGreaterThanOrEqual(79);
    // Home is holes 1 to 6, whose highest reed is B5.
    expect(Math.max(...above)).toBeGreaterThan(83);
    expect(Math.max(...pitches({ highest: 67 }))).toBeLessThanOrEqual(67);
  });

  test('a plan names the phrases in order, each as long as the others', () => {
    const { steps } = composeLine(CHART, 'C', { plan: 'ABAC' });
    const letters = [1, 4, 7, 10].map((bar) => steps.find((step) => step.bar === bar)?.phrase);
    expect(letters).toEqual(['A', 'B', 'A', 'C']);
  });

  test('the line has the tempo of its chart', () => {
    expect(composeLine(CHART, 'C').line.tempo).toBe(88);
  });
});
