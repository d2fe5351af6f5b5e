import { makeHarp } from '@reedplate/layout';
import { parseChord } from '@reedplate/pitch';
import { Chord as TonalChord } from 'tonal';
import { describe, expect, it } from 'vitest';
import { chordShapes } from './chord-shape.js';
import { METRICAL_STRENGTH, metricalStrength } from './score/metrical.js';
import { targetsOf } from './target.js';

const harp = makeHarp('C');

describe('chordShapes against what is known of the standard layout', () => {
  // Wikipedia, "Richter-tuned harmonica": the blow notes are the tonic triad; draw 1-4 the dominant.
  it('chordShapes finds the tonic triad on every three blow holes', () => {
    const runs = chordShapes('C', harp).filter(
      ({ gesture, holes }) => gesture === 'run' && holes.length === 3,
    );
    expect(runs.map(({ breath, holes }) => `${breath} ${holes[0]}`)).toEqual(
      [1, 2, 3, 4, 5, 6, 7, 8].map((hole) => `blow ${hole}`),
    );
  });

  // Computed from the layout; Missin, tuning-list post, 16 July 1996: "just G dominant 9th" for G9.
  it.each([
    ['G', 'draw 123'],
    ['G', 'draw 234'],
    ['G', 'draw 1234'],
    ['G7', 'draw 2345'],
    ['G7', 'draw 12345'],
    ['G9', 'draw 23456'],
    ['Bdim', 'draw 345'],
    ['Bdim', 'draw 789'],
    ['Dm', 'draw 456'],
    ['Dm', 'draw 8910'],
    ['Bm7b5', 'draw 3456'],
    ['Bm7b5', 'draw 78910'],
  ])('chordShapes gives %s complete on %s', (chord, place) => {
    const complete = chordShapes(chord, harp)
      .filter(({ gesture, fit }) => gesture === 'run' && fit === 'complete')
      .map(({ breath, holes }) => `${breath} ${holes.join('')}`);
    expect(complete).toContain(place);
  });

  // Common practice, equal to what the layout gives: octaves by splits of one to three blocked holes.
  it('chordShapes finds all octave splits', () => {
    const octaves = ['C', 'G', 'D', 'B', 'F', 'A', 'E'].flatMap((root) =>
      chordShapes(`${root}5`, harp)
        .filter(
          ({ gesture, tones }) =>
            gesture === 'split' && tones.every(({ degree }) => degree === '1'),
        )
        .map(({ breath, holes }) => `${breath} ${holes.join('-')}`),
    );
    expect(new Set(octaves)).toEqual(
      new Set([
        ...[1, 2, 3, 4, 5, 6, 7].map((hole) => `blow ${hole}-${hole + 3}`),
        'draw 1-4',
        'draw 3-7',
        'draw 4-8',
        'draw 5-9',
        'draw 6-10',
      ]),
    );
  });
});

describe('targetsOf against tables of chord tones by position', () => {
  // Computed from the layout, for three positions: root, third, fifth and seventh on natural notes.
  it.each([
    ['C7', '1', '1b 4b 7b 10b'],
    ['F7', '1', '5d 9d'],
    ['F7', 'b7', ''],
    ['G7', '3', '3d 7d'],
    ['G7', 'b7', '5d 9d'],
    ['C7', 'b7', ''],
    ['D7', '5', '6d 10d'],
    ['D7', 'b7', '1b 4b 7b 10b'],
    ['Dm7', 'b3', '5d 9d'],
    ['A7', '5', '2b 5b 8b'],
    ['A7', '3', ''],
  ])('targetsOf %s has its %s at %s', (chord, degree, places) => {
    const found = targetsOf(chord, harp, { level: 'natural' })
      .filter((target) => target.degree === degree)
      .map(({ sounding }) => `${sounding.hole}${sounding.breath.charAt(0)}`);
    expect(found.join(' ')).toBe(places);
  });

  // tonal 6.4.3 as an outside reading of chord symbols.
  it.each(['C', 'Bbm7b5', 'F#dim7', 'Ebmaj9', 'G13', 'A7#9', 'Dsus4', 'Caug'])(
    'targetsOf %s names the tones that tonal names',
    (symbol) => {
      const named = new Set(targetsOf(symbol, harp).map(({ name }) => name.replace(/\d+$/u, '')));
      expect(named).toEqual(new Set(TonalChord.get(symbol).notes));
      expect(parseChord(symbol).tones.length).toBe(TonalChord.get(symbol).notes.length);
    },
  );
});

describe('metricalStrength against the metrical tree', () => {
  // Longuet-Higgins and Lee (1984) weights for sixteenths of a 4/4 bar, value from memory:
  // 0 -4 -3 -4 -2 -4 -3 -4 -1 -4 -3 -4 -2 -4 -3 -4, mapped by (4 + w) / 4.
  it('metricalStrength gives the sixteenths of a bar their places in the tree', () => {
    const tree = [0, -4, -3, -4, -2, -4, -3, -4, -1, -4, -3, -4, -2, -4, -3, -4];
    const strengths = tree.map((_, sixteenth) => metricalStrength(sixteenth / 4, 4));
    expect(strengths).toEqual(tree.map((weight) => (4 + weight) / 4));
  });

  it('metricalStrength takes a slightly early note as on its beat, and triplets as off-beats', () => {
    expect(metricalStrength(-0.05, 4)).toBe(METRICAL_STRENGTH.downbeat);
    expect(metricalStrength(2.04, 4)).toBe(METRICAL_STRENGTH.halfBar);
    expect(metricalStrength(1 + 1 / 3, 4)).toBe(METRICAL_STRENGTH.offBeat);
    expect(metricalStrength(1 + 2 / 3, 4)).toBe(METRICAL_STRENGTH.offBeat);
    expect(metricalStrength(1.2, 4)).toBe(METRICAL_STRENGTH.between);
    expect(metricalStrength(1, 3)).toBe(METRICAL_STRENGTH.beat);
  });
});
