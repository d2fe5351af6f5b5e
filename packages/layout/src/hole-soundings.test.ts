import { midi, noteNameWithOctave } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { breathSoundings } from './hole-soundings.js';
import type { Breath, TechniqueLevel } from './sounding.js';

function sounded(blow: string, draw: string, level: TechniqueLevel = 'overbends', valved = false) {
  const reeds = { hole: 1, blow: midi(blow), draw: midi(draw) } as const;
  return (['blow', 'draw'] as const satisfies readonly Breath[]).flatMap((breath) =>
    breathSoundings(reeds, breath, { level, valved })
      .filter(({ technique }) => technique !== 'natural')
      .map(({ technique, pitch }) => `${breath} ${technique} ${noteNameWithOctave(pitch)}`),
  );
}

describe('breathSoundings', () => {
  // Worked by hand from the rule; common practice, no source.
  it.each([
    ['C4', 'D4', ['blow overblow Eb4', 'draw bend Db4']],
    ['E4', 'G4', ['blow overblow Ab4', 'draw bend Gb4', 'draw bend F4']],
    ['G4', 'B4', ['blow overblow C5', 'draw bend Bb4', 'draw bend A4', 'draw bend Ab4']],
    ['E5', 'F5', ['blow overblow Gb5']],
    ['C6', 'B5', ['draw overdraw Db6']],
    ['E6', 'D6', ['blow bend Eb6', 'draw overdraw F6']],
    ['C7', 'A6', ['blow bend B6', 'blow bend Bb6', 'draw overdraw Db7']],
    ['C4', 'C4', []],
    [
      'C4',
      'F4',
      ['blow overblow Gb4', 'draw bend E4', 'draw bend Eb4', 'draw bend D4', 'draw bend Db4'],
    ],
  ])('bends and overbends blow %s, draw %s by rule', (blow, draw, expected) => {
    expect(sounded(blow, draw)).toEqual(expected);
  });

  it('keeps to the level: unbent notes only, then bends, then overbends', () => {
    expect(sounded('C4', 'D4', 'natural')).toEqual([]);
    expect(sounded('C4', 'D4', 'bends')).toEqual(['draw bend Db4']);
  });

  it('bends the lower reed by itself, instead of overbending, in a valved hole', () => {
    expect(sounded('C4', 'D4', 'overbends', true)).toEqual([
      'blow valved-bend B3',
      'blow valved-bend Bb3',
      'draw bend Db4',
    ]);
    expect(sounded('C6', 'B5', 'bends', true)).toEqual([
      'draw valved-bend Bb5',
      'draw valved-bend A5',
    ]);
    expect(sounded('C6', 'B5', 'natural', true)).toEqual([]);
    expect(sounded('C4', 'C4', 'overbends', true)).toEqual([]);
  });

  it('counts the depth of bends from the unbent note and puts an overbend at depth 1', () => {
    const reeds = { hole: 3, blow: 67, draw: 71 } as const;
    const ability = { level: 'overbends', valved: false } as const;
    expect(breathSoundings(reeds, 'draw', ability).map(({ depth }) => depth)).toEqual([0, 1, 2, 3]);
    expect(breathSoundings(reeds, 'blow', ability).map(({ depth }) => depth)).toEqual([0, 1]);
  });
});
