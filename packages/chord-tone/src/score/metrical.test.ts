import { makeChart, parseForm } from '@reedplate/form';
import { type Metre, makeLine, parseMetre } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { METRICAL_STRENGTH, metricalStrength } from './metrical.js';
import { scoreLine } from './score-line.js';

/** A metre as its tree: how many equal parts each level has, from the bar down to the sixteenths. */
const TREES = {
  '4/4': [2, 2, 2, 2],
  '2/4': [2, 2, 2],
  '3/4': [3, 2, 2],
} as const;

/**
 * Longuet-Higgins and Lee (1984): a place weighs 0 at the top of the tree and −1 for every level
 * further down at which it first begins a part. Found here by walking the tree.
 */
function treeWeights(tree: readonly number[], weight = 0): readonly number[] {
  const [parts, ...below] = tree;
  if (parts === undefined) return [weight];
  return Array.from({ length: parts }, (_, part) =>
    treeWeights(below, part === 0 ? weight : -(5 - tree.length)),
  ).flat();
}

describe('metricalStrength against the metrical tree', () => {
  // 4/4 in sixteenths as syncopation indices print it (Longuet-Higgins and Lee 1984, from memory).
  it('the tree of this test gives the weights that are printed for 4/4', () => {
    expect(treeWeights(TREES['4/4'])).toEqual([
      0, -4, -3, -4, -2, -4, -3, -4, -1, -4, -3, -4, -2, -4, -3, -4,
    ]);
  });

  it('metricalStrength maps the tree of 4/4 to 0 to 1', () => {
    const strengths = treeWeights(TREES['4/4']).map((_, at) => metricalStrength(at / 4, 4));
    expect(strengths).toEqual(treeWeights(TREES['4/4']).map((weight) => (4 + weight) / 4));
  });

  // Lerdahl and Jackendoff (1983), dots of a 4/4 bar in eighths: 4 1 2 1 3 1 2 1 (from memory).
  it('metricalStrength orders the eighths of 4/4 as their dots do', () => {
    const dots = [4, 1, 2, 1, 3, 1, 2, 1];
    const strengths = dots.map((_, at) => metricalStrength(at / 2, 4));
    expect(strengths).toEqual(dots.map((count) => count / 4));
  });

  it.each([
    ['2/4', 2, [1, 0.25, 0.75, 0.25]],
    ['3/4', 3, [1, 0.25, 0.5, 0.25, 0.5, 0.25]],
    ['5/4', 5, [1, 0.25, 0.5, 0.25, 0.5, 0.25, 0.5, 0.25, 0.5, 0.25]],
  ])('metricalStrength gives the eighths of %s their places', (_, beats, expected) => {
    expect(expected.map((__, at) => metricalStrength(at / 2, beats))).toEqual(expected);
  });

  it('metricalStrength gives 3/4 the order of its tree', () => {
    const weights = treeWeights(TREES['3/4']);
    const strengths = weights.map((_, at) => metricalStrength(at / 4, 3));
    for (const [a, one] of strengths.entries()) {
      for (const [b, other] of strengths.entries()) {
        const [first, second] = [weights[a] ?? 0, weights[b] ?? 0];
        if (one > other) expect(first).toBeGreaterThan(second);
      }
    }
  });

  // Extension, no source: 12/8 is felt in four; the inner eighths count as off-beats.
  it('metricalStrength reads the eighths of 12/8', () => {
    const strengths = Array.from({ length: 12 }, (_, eighth) => metricalStrength(eighth / 3, 4));
    expect(strengths).toEqual([1, 0.25, 0.25, 0.5, 0.25, 0.25, 0.75, 0.25, 0.25, 0.5, 0.25, 0.25]);
  });
});

describe('metricalStrength off the grid', () => {
  const values: readonly number[] = Object.values(METRICAL_STRENGTH);

  it('metricalStrength is one of five strengths, the same a bar later', () => {
    const time = fc.double({ min: -8, max: 64, noNaN: true });
    fc.assert(
      fc.property(time, fc.integer({ min: 1, max: 12 }), (beats, inBar) => {
        expect(values).toContain(metricalStrength(beats, inBar));
      }),
    );
  });

  it('metricalStrength gives a note less than a twelfth of a beat off its place the same', () => {
    const place = fc.integer({ min: 0, max: 7 }).map((eighth) => eighth / 2);
    const off = fc.double({ min: -0.083, max: 0.083, noNaN: true });
    fc.assert(
      fc.property(place, off, (at, by) => {
        expect(metricalStrength(at + by, 4)).toBe(metricalStrength(at, 4));
      }),
    );
  });

  it('metricalStrength takes a twelfth of a beat as off its place', () => {
    expect(metricalStrength(1 / 12, 4)).toBe(METRICAL_STRENGTH.between);
    expect(metricalStrength(1 - 1 / 12, 4)).toBe(METRICAL_STRENGTH.between);
  });
});

describe('metre of scoreLine', () => {
  // A twelfth of a beat is the bound itself: counted from bar 1 of a long line, rounding decided it.
  it('metre of scoreLine is the same in every bar at every tick', () => {
    const chart = makeChart('basic', 'G', { choruses: 4 });
    const swings = fc.constantFrom(1, 1.5, 2, 3);
    fc.assert(
      fc.property(fc.nat(3839), fc.integer({ min: 1, max: 47 }), swings, (tick, bar, swing) => {
        const line = makeLine([
          { start: tick, duration: 100, pitch: 67 },
          { start: bar * 3840 + tick, duration: 100, pitch: 62 },
        ]);
        const [first, later] = scoreLine(line, chart, { swing }).notes;
        expect(later?.metre).toBe(first?.metre);
        expect(later?.beat).toBe(first?.beat);
      }),
    );
    const bound = Array.from({ length: 48 }, (_, bar) => ({
      start: bar * 3840 + 80,
      duration: 100,
      pitch: 60 + (bar % 2),
    }));
    const metres = scoreLine(makeLine(bound), chart, { swing: 1 }).notes.map(({ metre }) => metre);
    expect(new Set(metres)).toEqual(new Set([METRICAL_STRENGTH.between]));
  });

  it.each<[Metre, readonly number[]]>([
    ['4/4', [1, 0.5, 0.75, 0.5]],
    ['3/4', [1, 0.5, 0.5]],
    ['2/4', [1, 0.75]],
    ['6/8', [1, 0.75]],
    ['9/8', [1, 0.5, 0.5]],
    ['12/8', [1, 0.5, 0.75, 0.5]],
  ])('metre of scoreLine on the felt beats of %s', (metre, expected) => {
    const { beatTicks, beatsPerBar } = parseMetre(metre);
    const chart = makeChart(parseForm('| I7 | IV7 |'), 'G', { metre });
    const notes = Array.from({ length: beatsPerBar }, (_, beat) => ({
      start: beat * beatTicks,
      duration: beatTicks - 1,
      pitch: 67 + (beat % 2),
    }));
    const { notes: judged } = scoreLine(makeLine(notes, { metre }), chart, { swing: 1 });
    expect(judged.map((note) => note.metre)).toEqual(expected);
    expect(judged.map((note) => note.beat)).toEqual(expected.map((_, beat) => beat + 1));
  });
});
