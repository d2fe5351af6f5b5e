import { type Harp, makeHarp, type TechniqueLevel, transposeHarp } from '@reedplate/layout';
import { type Line, makeLine, transposeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levels, melodyCases } from './arbitraries.fixture.js';
import {
  bestPath,
  bestPaths,
  effortSensitivity,
  explainPath,
  type PathAlternative,
} from './index.js';

const C = makeHarp('C');
const notes = (...pitches: number[]) =>
  makeLine(pitches.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })));

function refused(...args: Parameters<typeof bestPath>) {
  const found = bestPath(...args);
  if (found.playable) throw new Error('playable');
  return found;
}

/** What an alternative stands for, as a call of bestPath. */
function changed(
  line: Line,
  harp: Harp,
  level: TechniqueLevel,
  change: PathAlternative,
): Parameters<typeof bestPath> {
  if (change.change === 'octave') return [transposeLine(line, change.semitones), harp, { level }];
  if (change.change === 'harp') return [line, change.harp, { level }];
  return [line, harp, { level: change.level }];
}

describe('bestPath of a line that cannot be played', () => {
  test('bestPath names the first events that cannot be sounded, with bar, beat and cause', () => {
    const { first, missing, playableShare } = refused(notes(60, 61, 62, 40, 75), C, {
      level: 'natural',
    });
    expect([missing, playableShare]).toEqual([3, 0.4]);
    expect(first).toEqual([
      { event: 1, bar: 1, beat: 2, pitches: [61], obstacle: 'beyond-level' },
      { event: 3, bar: 1, beat: 4, pitches: [40], obstacle: 'out-of-range' },
      { event: 4, bar: 2, beat: 1, pitches: [75], obstacle: 'beyond-level' },
    ]);
  });

  test('bestPath lists at most five events and counts them all', () => {
    const { first, missing } = refused(notes(...Array(9).fill(40)), C);
    expect([first.length, missing]).toEqual([5, 9]);
  });

  test('bestPath tells a gap in the harp from its range, and a chord without a grip from both', () => {
    // The narrow whole-tone layout has no bends; six semitones lie between its reeds of no hole.
    const solo = makeHarp('C', { tuning: 'solo-ten' });
    const chord = makeLine(
      [0, 4].map((up) => ({ start: 0, duration: 960, pitch: 60 + up + (up && -2) })),
    );
    expect(refused(chord, solo).first[0]?.obstacle).toBe('no-grip');
    const gapped = { ...C, holes: C.holes.filter(({ hole }) => hole === 1 || hole === 10) };
    expect(refused(notes(75), gapped).first[0]?.obstacle).toBe('gap');
  });

  test('bestPath offers the level, the octave and the harps that make a line playable', () => {
    const { alternatives } = refused(notes(61, 62), C, { level: 'natural' });
    expect(alternatives[0]).toMatchObject({ change: 'level', level: 'bends' });
    const harps = refused(notes(75), C, { level: 'bends' }).alternatives.flatMap((alternative) =>
      alternative.change === 'harp' ? [alternative.harp.key] : [],
    );
    expect(harps).toHaveLength(3);
    const low = refused(notes(48, 50, 52), C).alternatives;
    expect(low.find(({ change }) => change === 'octave')).toMatchObject({ semitones: 12 });
  });

  test('bestPath offers nothing for a line wider than any harp', () => {
    expect(refused(notes(20, 120), C).alternatives).toEqual([]);
  });

  test('bestPath: every alternative is a path of that effort', () => {
    let offered = 0;
    fc.assert(
      fc.property(melodyCases, levels, ([line, harp], level) => {
        const found = bestPath(line, harp, { level });
        if (found.playable) return;
        for (const change of found.alternatives) {
          offered += 1;
          const path = bestPath(...changed(line, harp, level, change));
          expect(path.playable && path.effort).toBe(change.effort);
        }
      }),
    );
    expect(offered).toBeGreaterThan(50);
  });

  test('bestPath offers the easiest three harps of all other keys, and the octaves it has, easiest first', () => {
    const upTo = (most: number) =>
      Array.from({ length: 2 * most }, (_, at) => (at < most ? at - most : at - most + 1));
    const effortOf = (line: Line, on: Harp, level: TechniqueLevel) => {
      const path = bestPath(line, on, { level });
      return path.playable ? [path.effort] : [];
    };
    const rising = (efforts: readonly number[]) => [...efforts].sort((a, b) => a - b);
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 50, max: 98 }), { minLength: 1, maxLength: 4 }),
        levels,
        (pitches, level) => {
          const line = notes(...pitches);
          const found = bestPath(line, C, { level });
          if (found.playable) return;
          const offered = (kind: PathAlternative['change']) =>
            found.alternatives.flatMap(({ change, effort }) => (change === kind ? [effort] : []));
          const keys = upTo(6).filter((semitones) => semitones < 6);
          const harps = keys.flatMap((semitones) =>
            effortOf(line, transposeHarp(C, semitones), level),
          );
          expect(offered('harp')).toEqual(rising(harps).slice(0, 3));
          const octaves = upTo(2).flatMap((octave) =>
            effortOf(transposeLine(line, 12 * octave), C, level),
          );
          expect(offered('octave')).toEqual(rising(octaves));
        },
      ),
      // Eleven harps each time.
      { numRuns: 30 },
    );
  });

  test('bestPath offers the lowest level that will do, and no level to who has them all', () => {
    const levelsFor = (pitch: number, level: TechniqueLevel) =>
      refused(notes(pitch), C, { level }).alternatives.flatMap((alternative) =>
        alternative.change === 'level' ? [alternative.level] : [],
      );
    // Bb4 is a bend of 3 draw, Eb4 an overblow of 1; below C4 there is nothing.
    expect(levelsFor(70, 'natural')).toEqual(['bends']);
    expect(levelsFor(63, 'natural')).toEqual(['overbends']);
    expect(levelsFor(63, 'bends')).toEqual(['overbends']);
    expect(levelsFor(59, 'overbends')).toEqual([]);
  });

  test('bestPath passes over an octave that no note has', () => {
    const octavesOf = (pitch: number) =>
      refused(notes(pitch), C).alternatives.flatMap((alternative) =>
        alternative.change === 'octave' ? [alternative.semitones] : [],
      );
    expect(octavesOf(120)).toEqual([-24]);
    expect(octavesOf(43)).toEqual([24]);
  });

  test('bestPaths, explainPath and effortSensitivity give the same answer', () => {
    const line = notes(61, 40);
    const expected = refused(line, C);
    expect(bestPaths(line, C)).toEqual(expected);
    expect(explainPath(line, C)).toEqual(expected);
    expect(effortSensitivity(line, C)).toEqual(expected);
  });
});

describe('bestPath of what is no line or no setting', () => {
  test.each([
    [notes(), {}, 'LINE_EMPTY'],
    [notes(60), { level: 'bend' }, 'OPTION_UNKNOWN'],
    [notes(60), { objective: 'most' }, 'OPTION_UNKNOWN'],
    [notes(60), { tempo: 0 }, 'NUMBER_RANGE'],
    [notes(60), { tempo: Number.NaN }, 'NUMBER_RANGE'],
  ])('bestPath refuses %j with %j', (line, options, code) => {
    expect(() => bestPath(line, C, options as object)).toThrow(expect.objectContaining({ code }));
  });

  test('bestPaths gives three paths where no number is asked for, and takes any up to 1000', () => {
    const line = notes(67, 67, 67);
    const count = (options = {}) => {
      const found = bestPaths(line, C, options);
      return found.playable && found.paths.length;
    };
    // Each G is 2 draw or 3 blow: eight paths in all.
    expect([count(), count({ count: 1 }), count({ count: 1000 })]).toEqual([3, 1, 8]);
  });

  test.each([0, 1.5, 1001])('bestPaths refuses the count %d', (count) => {
    expect(() => bestPaths(notes(60), C, { count })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
  });
});
