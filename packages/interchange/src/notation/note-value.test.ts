import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { noteValues } from './note-value.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const names = (ticks: number): string | undefined =>
  noteValues(ticks)
    ?.map(({ type, dots, triplet }) => `${type}${'.'.repeat(dots)}${triplet ? '/3' : ''}`)
    .join('-');

describe('noteValues', () => {
  test.each([
    [960, 'quarter'],
    [1440, 'quarter.'],
    [1680, 'quarter..'],
    [320, 'eighth/3'],
    [2400, 'half-eighth'],
    [2560, 'half-quarter/3'],
    [60, '64th'],
    [901, undefined],
    [1, undefined],
  ])('noteValues of %i ticks are %s', (ticks, expected) => {
    expect(names(ticks)).toBe(expected);
  });

  test('noteValues last as long as asked, for every multiple of a 64th', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), (count) => {
        const total = noteValues(count * 60)?.reduce((sum, { ticks }) => sum + ticks, 0);
        expect(total).toBe(count * 60);
      }),
    );
  });
});
