import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textBoxes } from '../text-boxes.fixture.js';
import { disc } from './draw.js';
import { makeFrame, SMALLEST_TEXT } from './frame.js';
import { drawLegend, type LegendItem } from './legend.js';
import { writeNode } from './node.js';

const itemOf = (label: string): LegendItem => ({
  label,
  sign: (x, y, r) => disc(x, y, r, { fill: '#000000' }),
});

const anyLabels = fc.array(fc.stringMatching(/^[a-z]{1,24}$/u), { minLength: 1, maxLength: 8 });

describe('drawLegend', () => {
  it('drawLegend keeps every label whole, apart and readable, in the order given', () => {
    fc.assert(
      fc.property(anyLabels, fc.integer({ min: 280, max: 900 }), (labels, width) => {
        const frame = makeFrame({ width, theme: 'screen' }, 'A picture');
        const { nodes, bottom } = drawLegend(frame, labels.map(itemOf), 50);
        const boxes = textBoxes(nodes.map(writeNode).join(''));
        expect(boxes.map(({ text }) => text)).toEqual(labels);
        for (const [at, box] of boxes.entries()) {
          expect(box.size).toBeGreaterThanOrEqual(SMALLEST_TEXT);
          expect(box.left).toBeGreaterThanOrEqual(frame.left);
          expect(box.right).toBeLessThanOrEqual(frame.right + 0.01);
          expect(box.bottom).toBeLessThanOrEqual(bottom);
          const next = boxes[at + 1];
          if (next !== undefined) expect(next.top > box.bottom || next.left > box.right).toBe(true);
        }
      }),
    );
  });

  it('drawLegend takes no room without items', () => {
    expect(drawLegend(makeFrame({}, 'A picture'), [], 50)).toEqual({ nodes: [], bottom: 50 });
  });

  it('drawLegend sets a label smaller that is wider than the picture, down to the smallest text', () => {
    const frame = makeFrame({ width: 320, theme: 'large' }, 'A picture');
    const sizeOf = (label: string): number => {
      const { nodes } = drawLegend(frame, [itemOf(label)], 50);
      return textBoxes(nodes.map(writeNode).join(''))[0]?.size ?? 0;
    };
    expect(sizeOf('short')).toBeCloseTo(24 * 0.8);
    expect(sizeOf('what the outlined cells mean')).toBeLessThan(24 * 0.8);
    expect(sizeOf('x'.repeat(200))).toBe(SMALLEST_TEXT);
  });
});
