import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lanesOf, layLabels } from './lay-labels.js';

const anyLabels = fc
  .array(fc.record({ x: fc.nat(500), width: fc.integer({ min: 1, max: 80 }) }), { maxLength: 20 })
  .map((labels) => labels.map((label) => ({ text: 'x', ...label })).sort((a, b) => a.x - b.x));

describe('layLabels', () => {
  it('layLabels keeps labels of a lane apart by the gap, and within the right edge', () => {
    fc.assert(
      fc.property(anyLabels, (labels) => {
        const placed = layLabels(labels, { right: 500, gap: 4 });
        for (const [at, label] of placed.entries()) {
          expect(label.x + label.width).toBeLessThanOrEqual(500);
          for (const other of placed.slice(at + 1).filter(({ lane }) => lane === label.lane)) {
            expect(
              other.x >= label.x + label.width + 4 || label.x >= other.x + other.width + 4,
            ).toBe(true);
          }
        }
      }),
    );
  });

  it('layLabels takes the nearest lane that is free', () => {
    const at = (x: number) => ({ text: 'x', x, width: 10 });
    const placed = layLabels([at(0), at(5), at(20)], { right: 100, gap: 0 });
    expect(placed.map(({ lane }) => lane)).toEqual([0, 1, 0]);
    expect(lanesOf(placed)).toBe(2);
    expect(lanesOf([])).toBe(1);
  });
});
