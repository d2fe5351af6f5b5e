import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { box, disc, path, say, sayAt } from './draw.js';
import { writeNode } from './node.js';
import { type Shape, shape, wideShape } from './shapes.js';

const SHAPES: readonly Shape[] = ['disc', 'diamond', 'up', 'down', 'square', 'hexagon'];
const INK = { fill: '#000000' };

/** The corners of a path, in order. */
const cornersOf = (svg: string) =>
  [...svg.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/gu)].map(
    ([, x, y]) => [Number(x), Number(y)] as const,
  );

describe('shape', () => {
  it.each(SHAPES)('shape %s lies around its point, within a sixth more than its radius', (kind) => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 60 }), (radius) => {
        const svg = writeNode(shape(kind, 100, 100, radius, INK));
        if (kind === 'disc') {
          expect(svg).toBe(`<circle cx="100" cy="100" r="${radius}" fill="#000000"/>`);
          return;
        }
        for (const place of cornersOf(svg).flat()) {
          expect(Math.abs(place - 100)).toBeLessThanOrEqual(radius * 1.17);
        }
        expect(svg).toContain('Z"');
      }),
    );
  });

  it('shape draws six outlines that differ', () => {
    const drawn = SHAPES.map((kind) => writeNode(shape(kind, 50, 50, 10, INK)));
    expect(new Set(drawn).size).toBe(SHAPES.length);
  });

  it('shape up and down are one turned over', () => {
    const [up, down] = (['up', 'down'] as const).map((kind) =>
      cornersOf(writeNode(shape(kind, 0, 0, 10, INK))),
    );
    expect(down?.map(([x, y]) => [x, -y + 0])).toEqual(up?.map(([x, y]) => [x, y]));
  });

  it('wideShape is as wide and high as is asked', () => {
    const place = { x: 50, y: 50, halfWidth: 20, halfHeight: 8 };
    const corners = cornersOf(writeNode(wideShape('hexagon', place, INK)));
    expect(Math.max(...corners.map(([x]) => x)) - 50).toBe(20);
    expect(Math.max(...corners.map(([, y]) => y)) - 50).toBeCloseTo(7.2);
  });
});

describe('path, box and disc', () => {
  it('path closes where the last point is the first, and only there', () => {
    const open = writeNode(
      path(
        [
          [0, 0],
          [4, 0],
          [4, 4],
        ],
        { stroke: '#111111' },
      ),
    );
    expect(open).toBe('<path d="M0 0L4 0L4 4" fill="none" stroke="#111111" stroke-width="1"/>');
    const closed = writeNode(
      path(
        [
          [0, 0],
          [4, 0],
          [4, 4],
          [0, 0],
        ],
        INK,
      ),
    );
    expect(closed).toContain('d="M0 0L4 0L4 4Z"');
    expect(
      writeNode(
        path(
          [
            [1, 1],
            [1, 1],
          ],
          INK,
        ),
      ),
    ).toContain('d="M1 1L1 1"');
  });

  it('box rounds its corners, and dashes its edge, where that is asked', () => {
    const place = { x: 1, y: 2, width: 3, height: 4 };
    expect(writeNode(box(place, {}))).toBe('<rect x="1" y="2" width="3" height="4" fill="none"/>');
    const look = { corner: 2, stroke: '#222222', strokeWidth: 2, dash: '3 1' };
    expect(writeNode(box(place, look))).toContain(
      'rx="2" fill="none" stroke="#222222" stroke-width="2" stroke-dasharray="3 1"',
    );
  });

  it('disc has an edge only where a stroke is given', () => {
    expect(writeNode(disc(1, 2, 3, INK))).not.toContain('stroke');
    expect(writeNode(disc(1, 2, 3, { stroke: '#333333' }))).toContain(
      'fill="none" stroke="#333333"',
    );
  });
});

describe('say', () => {
  it('say and sayAt leave out what is usual', () => {
    const look = { x: 1, y: 20, size: 10, fill: '#000000' };
    expect(writeNode(say('G7', look))).toBe(
      '<text x="1" y="20" font-size="10" fill="#000000">G7</text>',
    );
    expect(writeNode(sayAt('G7', { ...look, weight: 'bold' }))).toBe(
      '<text x="1" y="23.6" font-size="10" fill="#000000" font-weight="bold" text-anchor="middle">G7</text>',
    );
  });
});
