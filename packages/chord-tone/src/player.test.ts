import { makeChart } from '@reedplate/form';
import { makePlayer } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import {
  chartAvailability,
  chordAvailability,
  chordNow,
  chordShapes,
  describeWarning,
  harpRows,
  targetsOf,
} from './index.js';

/** Unbent notes, the bend on 4 draw, and no split. */
const beginner = makePlayer(['natural', { technique: 'bend', holes: [4] }], {
  id: 'lee',
  name: 'Lee',
  splits: [],
});
const bent = ({ technique }: { readonly technique: string }): boolean => technique !== 'natural';

describe('a player where a level is taken', () => {
  test('targetsOf names no bend that the player has not, and each that they have', () => {
    const found = targetsOf('Bbm', 'C', { level: beginner }).map(({ sounding }) => sounding);
    expect(found.filter(bent).map(({ hole, depth }) => [hole, depth])).toEqual([[4, 1]]);
    expect(targetsOf('Bbm', 'C', { level: 'bends' }).length).toBeGreaterThan(found.length);
  });

  test('harpRows and chordNow lay what the player has', () => {
    const rows = harpRows('C', { level: beginner }).filter(bent);
    expect(rows.flatMap(({ cells }) => cells.flatMap((cell) => cell?.hole ?? []))).toEqual([4]);
    const chart = makeChart('basic', 'F');
    const { targets } = chordNow(chart, { tick: 0 }, { harp: 'C', level: beginner });
    expect(targets).toEqual(targetsOf('F7', 'C', { level: beginner }));
  });

  test('chordShapes keeps the splits that the player can block', () => {
    const splits = (level: Parameters<typeof makePlayer>[1]): readonly string[] =>
      chordShapes('G7', 'C', { level: makePlayer(['natural'], level ?? {}) })
        .filter(({ gesture }) => gesture === 'split')
        .map(({ holes: [low = 0, high = 0] }) => `${high - low + 1}`);
    expect(splits({ splits: [] })).toEqual([]);
    expect(new Set(splits({ splits: [4] }))).toEqual(new Set(['4']));
    expect(new Set(splits({}))).toEqual(new Set(['3', '4', '5']));
  });

  test('chordShapes gives 2 draw within a chord also to who does not hold it alone', () => {
    const level = makePlayer(['natural'], { holdsTwoDraw: false });
    expect(chordShapes('G7', 'C', { level })).toEqual(chordShapes('G7', 'C', { level: 'natural' }));
    const alone = targetsOf('G7', 'C', { level }).map(({ sounding }) => sounding);
    expect(alone.some(({ hole, breath }) => hole === 2 && breath === 'draw')).toBe(false);
  });

  test('chordShapes of who has some holes alone is of these holes', () => {
    const level = makePlayer([{ technique: 'natural', holes: [1, 2, 3] }]);
    const holes = chordShapes('C', 'C', { level }).flatMap((shape) => shape.holes);
    expect(Math.max(...holes)).toBe(3);
  });

  test('chordAvailability and its warnings speak of the player', () => {
    const { warnings, chord, targets } = chordAvailability('D7', 'C', { level: beginner });
    expect(targets.map(({ sounding }) => sounding).filter(bent)).toEqual([]);
    const said = warnings.map((warning) => describeWarning(warning, { chord, level: beginner }));
    expect(said).toContain('the 3 of D7 is not among what Lee has');
    const [first] = chartAvailability(makeChart('basic', 'G'), 'C', { level: beginner });
    expect(first?.targets).toEqual(targetsOf('G7', 'C', { level: beginner }));
  });

  test('bends is the level where none is given', () => {
    expect(targetsOf('C7', 'C')).toEqual(targetsOf('C7', 'C', { level: 'bends' }));
    expect(chordAvailability('F7', 'C')).toEqual(chordAvailability('F7', 'C', { level: 'bends' }));
    expect(harpRows('C')).toEqual(harpRows('C', { level: 'bends' }));
  });
});
