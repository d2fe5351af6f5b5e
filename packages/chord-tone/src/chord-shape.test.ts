import { makeHarp } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { type ChordShape, chordShapes } from './chord-shape.js';
import type { PlayingStyle } from './styles.js';

const harp = makeHarp('C');

function shapeAt(
  chord: string,
  breath: string,
  holes: readonly number[],
  style: PlayingStyle = 'blues',
): ChordShape {
  const found = chordShapes(chord, harp, { style }).find(
    (shape) => shape.breath === breath && shape.holes.join() === holes.join(),
  );
  if (found === undefined) throw new Error(`no shape ${breath} ${holes.join()}`);
  return found;
}

describe('chordShapes', () => {
  it('finds the I chord on draw 1 to 4 and on each run of three in it', () => {
    const runs = chordShapes('G', harp).filter(
      ({ gesture, completeness, holes }) =>
        gesture === 'run' && completeness === 'complete' && Math.max(...holes) <= 4,
    );
    expect(runs.map(({ breath, holes }) => `${breath} ${holes.join('')}`)).toEqual([
      'draw 123',
      'draw 1234',
      'draw 234',
    ]);
  });

  it('finds the IV chord on any three neighbours of blow', () => {
    const runs = chordShapes('C', harp).filter(
      ({ gesture, breath }) => gesture === 'run' && breath === 'blow',
    );
    expect(runs.length).toBe(21);
    expect(runs.every(({ completeness, triad }) => completeness === 'complete' && triad)).toBe(
      true,
    );
  });

  it('finds no run that sounds the V chord cleanly', () => {
    const clean = chordShapes('D', harp).filter(
      ({ triad, clashes }) => triad && clashes.length === 0,
    );
    expect(clean).toEqual([]);
  });

  it('says that draw 4 and 5 contradict a major V by its third', () => {
    const shape = shapeAt('D7', 'draw', [4, 5]);
    expect(shape.completeness).toBe('clashing');
    expect(shape.clashes).toEqual([{ above: 'b3', roughness: 0.3, against: '3' }]);
    expect(shape.tones.map(({ degree, above, name }) => [degree, above, name])).toEqual([
      ['1', '1', 'D5'],
      [null, 'b3', 'F5'],
    ]);
  });

  it('finds the same holes a clean part of a minor V', () => {
    expect(shapeAt('Dm', 'draw', [4, 5])).toMatchObject({
      completeness: 'partial',
      lacks: ['5'],
      clashes: [],
    });
    expect(shapeAt('Dm', 'draw', [4, 5, 6])).toMatchObject({
      completeness: 'complete',
      triad: true,
    });
  });

  it('hears the flat third worse in a major tune than in a blues', () => {
    const [blues] = shapeAt('D7', 'draw', [4, 5]).clashes;
    const [major] = shapeAt('D7', 'draw', [4, 5], 'major').clashes;
    expect(major?.roughness).toBeGreaterThan(blues?.roughness ?? 1);
  });

  it('says what a shape lacks and what it adds', () => {
    expect(shapeAt('G7', 'draw', [1, 2, 3, 4])).toMatchObject({
      completeness: 'partial',
      lacks: ['b7'],
      triad: true,
    });
    expect(shapeAt('G7', 'draw', [2, 3, 4, 5])).toMatchObject({
      completeness: 'complete',
      lacks: [],
    });
    expect(shapeAt('G7', 'draw', [2, 3, 4, 5, 6])).toMatchObject({
      completeness: 'with-added-tones',
      adds: ['2'],
    });
    expect(shapeAt('G', 'draw', [2, 3, 4, 5])).toMatchObject({
      completeness: 'with-added-tones',
      adds: ['b7'],
    });
  });

  it('finds octave splits and double stops', () => {
    expect(shapeAt('D', 'draw', [1, 4])).toMatchObject({
      gesture: 'split',
      completeness: 'partial',
    });
    expect(shapeAt('C', 'blow', [4, 5])).toMatchObject({ gesture: 'double-stop', lacks: ['5'] });
    expect(shapeAt('G7', 'draw', [2, 5])).toMatchObject({ gesture: 'split', lacks: ['3', '5'] });
  });

  it('never calls a chord without a third a triad', () => {
    expect(chordShapes('G5', harp).some(({ triad }) => triad)).toBe(false);
    expect(chordShapes('Gsus4', harp).some(({ triad }) => triad)).toBe(false);
  });

  it('gives frozen shapes', () => {
    const [shape] = chordShapes('G', harp);
    expect(
      [shape, shape?.holes, shape?.tones, shape?.lacks, shape?.clashes].every(Object.isFrozen),
    ).toBe(true);
  });

  it('throws for a chord or style that does not exist', () => {
    expect(() => chordShapes('G', harp, { style: 'loud' as PlayingStyle })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: undefined }),
    );
    expect(() => chordShapes('X', harp)).toThrow(
      expect.objectContaining({ code: 'CHORD_UNKNOWN' }),
    );
  });
});
