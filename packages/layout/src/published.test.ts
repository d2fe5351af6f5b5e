import { midi } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { type Breath, makeHarp, missingPitches, soundings, soundingsAt } from './index.js';

const C_HARP = makeHarp('C');

function pitchesOf(breath: Breath): readonly number[] {
  return C_HARP.holes.map((hole) => hole[breath]);
}

const notes = (text: string): readonly number[] => text.split(' ').map(midi);

describe('the standard layout', () => {
  it('makeHarp gives the rows printed in Wikipedia, "Richter-tuned harmonica"', () => {
    expect(pitchesOf('blow')).toEqual(notes('C4 E4 G4 C5 E5 G5 C6 E6 G6 C7'));
    expect(pitchesOf('draw')).toEqual(notes('D4 G4 B4 D5 F5 A5 B5 D6 F6 A6'));
  });

  it('makeHarp gives the semitone offsets of OEIS A291810 (2017), blow and draw hole by hole', () => {
    const published = [0, 2, 4, 7, 7, 11, 12, 14, 16, 17, 19, 21, 24, 23, 28, 26, 31, 29, 36, 33];
    expect(C_HARP.holes.flatMap(({ blow, draw }) => [blow - 60, draw - 60])).toEqual(published);
  });

  it('soundings has 19 natural pitches from 20 reeds, as Wikipedia, "Richter-tuned harmonica", counts', () => {
    const natural = soundings(C_HARP, { level: 'natural' });
    expect(natural).toHaveLength(20);
    expect(new Set(natural.map(({ pitch }) => pitch)).size).toBe(19);
  });

  it('soundings bends the holes listed in Physics Stack Exchange question 450238', () => {
    const bent = soundings(C_HARP, { level: 'bends' }).filter(({ depth }) => depth > 0);
    const places = new Set(bent.map(({ hole, breath }) => `${breath} ${hole}`));
    expect([...places]).toEqual([
      'draw 1',
      'draw 2',
      'draw 3',
      'draw 4',
      'draw 6',
      'blow 8',
      'blow 9',
      'blow 10',
    ]);
  });

  it('soundingsAt bends holes 1 to 3 as the list post "Bending & overblows" (September 1994) works out', () => {
    const bends = (hole: number) =>
      soundingsAt(C_HARP, hole, 'draw', { level: 'bends' })
        .filter(({ technique }) => technique === 'bend')
        .map(({ pitch }) => pitch);
    expect(bends(1)).toEqual(notes('Db4'));
    expect(bends(2)).toEqual(notes('F#4 F4'));
    expect(bends(3)).toEqual(notes('Bb4 A4 Ab4'));
  });

  it('soundings overbends one semitone above the higher reed (common practice, no source)', () => {
    const overbent = soundings(C_HARP).filter(({ technique }) => /^over/u.test(technique));
    expect(overbent.map(({ pitch }) => pitch)).toEqual(
      notes('Eb4 Ab4 C5 Eb5 F#5 Bb5 Db6 F6 Ab6 Db7'),
    );
    expect(overbent.map(({ technique }) => technique)).toEqual([
      ...Array(6).fill('overblow'),
      ...Array(4).fill('overdraw'),
    ]);
  });

  it('missingPitches is empty with overbends (common practice: the harp is fully chromatic)', () => {
    expect(missingPitches(C_HARP)).toEqual([]);
    expect(missingPitches(C_HARP, { level: 'bends' })).toEqual(notes('Eb4 Eb5 F#5 Bb5 Db6 Ab6'));
  });
});
