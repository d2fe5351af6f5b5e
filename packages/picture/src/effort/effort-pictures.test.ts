import { makeHarp } from '@reedplate/layout';
import type { Line } from '@reedplate/line';
import { effortModelById, explainPath, type PathExplanation } from '@reedplate/playability';
import { lineOfTab, parseTimedTab } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyLook } from '../arbitraries.fixture.js';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { type AirStretch, airTrack } from './air-track.js';
import { breathPicture } from './breath-picture.js';
import { effortPicture } from './effort-picture.js';

const harp = makeHarp('C');

function explain(line: Line): PathExplanation {
  const found = explainPath(line, harp, { level: 'overbends' });
  if (!found.playable) throw new Error('not playable');
  return found;
}

const anyTab = fc
  .array(
    fc.tuple(
      fc.constantFrom('-1', '-2', "-3'", '-4', '+4', '+6', '-8', '+9', '(-1-2-3)', 'r', '+10'),
      fc.constantFrom('', ':1/2', ':4', ':1/4'),
    ),
    { minLength: 1, maxLength: 30 },
  )
  .map((words) => `-4 ${words.map((word) => word.join('')).join(' ')}`);

/** From where the one before ended, up while drawing, down while blowing, inwards at rest. */
function expectToFollow(stretch: AirStretch, before: AirStretch | undefined): void {
  expect(stretch.before).toBe(before?.after ?? 0);
  expect(stretch.start).toBe(before?.end ?? stretch.start);
  const rise = stretch.after - stretch.before;
  const moved = {
    draw: rise,
    blow: -rise,
    rest: Math.abs(stretch.before) - Math.abs(stretch.after),
  };
  expect(moved[stretch.breath]).toBeGreaterThanOrEqual(0);
}

describe('breathPicture and effortPicture', () => {
  it('breathPicture and effortPicture keep every text apart, readable and within the picture', () => {
    fc.assert(
      fc.property(anyTab, anyLook, (tab, look) => {
        const line = lineOfTab(parseTimedTab(tab), harp);
        const explained = explain(line);
        expect(textComplaints(breathPicture(explained, line, look).svg)).toEqual([]);
        expect(textComplaints(effortPicture(explained, look).svg)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('breathPicture says how far from half full each event ends', () => {
    const line = lineOfTab(parseTimedTab('-4:4 +4:8'), harp, { tempo: 60 });
    const { text, description } = breathPicture(explain(line), line);
    expect(text.split('\n').slice(1)).toEqual([
      'bar 1 beat 1: draw to 4 s above half full',
      'bar 2 beat 1: blow to 4 s below half full',
    ]);
    expect(description).toContain('0 of 2 events end beyond comfort');
  });

  it('breathPicture needs a model that it can find, or is given', () => {
    const line = lineOfTab(parseTimedTab('-4'), harp);
    const explained = explain(line);
    const own = { ...explained, path: { ...explained.path, model: 'mine' } };
    expect(() => breathPicture(own, line)).toThrow(/effort model/u);
    const model = effortModelById('beginner');
    expect(breathPicture(own, line, { model }).description).toContain('possible to');
  });

  it('airTrack runs from each event to the next without a gap, rests towards half full', () => {
    fc.assert(
      fc.property(anyTab, (tab) => {
        const line = lineOfTab(parseTimedTab(tab), harp, { tempo: 60 });
        const { chordAir } = effortModelById('intermediate').weights;
        const track = airTrack(explain(line).steps, chordAir, 1 / 960);
        for (const [at, stretch] of track.entries()) expectToFollow(stretch, track[at - 1]);
      }),
      { numRuns: 25 },
    );
  });

  it('effortPicture has a column an event and a row for each term that costs', () => {
    const explained = explain(lineOfTab(parseTimedTab("-2 -3' +4 +4"), harp));
    const { svg, text } = effortPicture(explained);
    const costing = Object.values(explained.terms).filter((cost) => cost > 0).length;
    expect(svg.match(/<rect /gu)).toHaveLength(1 + explained.steps.length + costing);
    expect(text.split('\n')).toHaveLength(1 + explained.steps.length + costing);
    expect(textBoxes(svg).some((box) => box.text === "-3'")).toBe(true);
  });

  it('effortPicture has the bar of every term at any width, as long as its points', () => {
    const explained = explain(lineOfTab(parseTimedTab("-2 -3' +4 -6 +4 (-1-2-3) -3''"), harp));
    const costs = Object.values(explained.terms).filter((cost) => cost > 0);
    for (const [theme, width] of [
      ['large', 320],
      ['screen', 320],
      ['print', 680],
    ] as const) {
      const { svg } = effortPicture(explained, { theme, width });
      const widths = [...svg.matchAll(/<rect x="[^"]*" y="[^"]*" width="([\d.]+)"/gu)]
        .slice(-costs.length)
        .map(([, wide]) => Number(wide));
      const [longest, most] = [Math.max(...widths), Math.max(...costs)];
      expect(longest).toBeGreaterThan(width * 0.2);
      const shares = widths.map((wide) => wide / longest).sort((a, b) => a - b);
      for (const [at, cost] of [...costs].sort((a, b) => a - b).entries()) {
        expect(shares[at]).toBeCloseTo(cost / most, 1);
      }
    }
  });
});
