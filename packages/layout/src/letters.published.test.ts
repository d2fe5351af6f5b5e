import { parseScale, toPitchClass } from '@reedplate/pitch';
import { expect, it } from 'vitest';
import { published } from '../../../test/sources/published.js';
import { makeHarp, SHADING_CENTS, shadings, soundingsAt } from './index.js';

published('shading-letter', 'how far 7 blow of a harp in G goes down', () => {
  it('shadings of 7 blow: a quarter tone as is commonly said, 90 cents as was measured', () => {
    const seven = shadings(makeHarp('G')).find(({ hole }) => hole === 7);
    expect(seven).toMatchObject({ breath: 'blow', pitch: 79, usual: 50, most: 90 });
  });

  it('shadings stay above the other reed, a semitone down', () => {
    const [blow] = soundingsAt('G', 7, 'blow');
    const [draw] = soundingsAt('G', 7, 'draw');
    expect((blow?.pitch ?? 0) - (draw?.pitch ?? 0)).toBe(1);
    expect(SHADING_CENTS.most).toBeLessThan(100);
  });
});

published('circular-letter', 'the circular rows as degrees, and their label', () => {
  // The label is the note of 1 blow, the fifth of the major scale that lies in the rows.
  const harp = makeHarp('G', { tuning: 'circular-second-draw' });
  const scale = parseScale('major').semitones;
  const tonic = harp.holes[1]?.draw ?? 0;
  const degreeOf = (pitch: number): number => scale.indexOf(toPitchClass(pitch - tonic)) + 1;

  it.each([
    ['blow', [5, 7, 2, 4, 6, 1, 3, 5, 7, 2]],
    ['draw', [6, 1, 3, 5, 7, 2, 4, 6, 1, 3]],
  ] as const)('the %s row has the degrees %j', (breath, degrees) => {
    expect(harp.holes.map((hole) => degreeOf(hole[breath]))).toEqual(degrees);
  });

  it('a harp labelled G plays C in first position, on 2 draw', () => {
    expect(harp.firstPosition).toBe('C');
    expect(tonic % 12).toBe(0);
  });
});

published('yerxa', 'solo with a flat seventh', () => {
  it('solo-flat-seventh has B flat for the left C of each pair of the solo layout', () => {
    const solo = makeHarp('C', { tuning: 'solo-twelve' }).holes.map(({ blow }) => blow);
    const changed = solo.map((pitch, hole) => (pitch === solo[hole + 1] ? pitch - 2 : pitch));
    const flat = makeHarp('C', { tuning: 'solo-flat-seventh' }).holes.map(({ blow }) => blow);
    expect(flat).toEqual(changed.slice(0, flat.length));
    expect(flat.filter((pitch) => pitch % 12 === 10)).toHaveLength(2);
  });

  it('its blow plate holds C7', () => {
    const flat = makeHarp('C', { tuning: 'bebop' }).holes.map(({ blow }) => blow % 12);
    expect([...new Set(flat)].sort((a, b) => a - b)).toEqual([0, 4, 7, 10]);
  });
});
