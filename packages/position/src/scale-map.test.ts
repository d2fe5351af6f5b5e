import { makeHarp } from '@reedplate/layout';
import { describe, expect, it } from 'vitest';
import { scaleMap, scaleRun } from './index.js';

const failure = (code: string) => expect.objectContaining({ code });
const HARP = makeHarp('C');

describe('scaleMap', () => {
  it('lists every note of the scale in the range of the reeds, the easiest sounding first', () => {
    const { notes } = scaleMap(HARP, 'G', 'minor pentatonic', { level: 'overbends' });
    expect(notes.slice(0, 5).map(({ name, degree }) => `${name} ${degree}`)).toEqual([
      'C4 4',
      'D4 5',
      'F4 b7',
      'G4 1',
      'Bb4 b3',
    ]);
    const c5 = notes.find(({ name }) => name === 'C5');
    expect(c5?.soundings.map(({ hole, technique }) => `${hole} ${technique}`)).toEqual([
      '4 natural',
      '3 overblow',
    ]);
  });

  it('gives the blues scale of cross harp its coverage by level', () => {
    const { levels } = scaleMap(HARP, 'G', 'blues');
    expect(levels.natural).toMatchObject({ missing: ['b3', 'b5'] });
    expect(levels.bends).toMatchObject({ missing: [], incomplete: ['b3', 'b5'] });
    expect(levels.overbends).toMatchObject({ missing: [], incomplete: [], coverage: 1 });
  });

  it('has all of the major scale in first position but for the low octave, unbent', () => {
    const { levels, position } = scaleMap(HARP, 'C', 'major');
    expect(position).toBe(1);
    expect(levels.natural.incomplete).toEqual(['4', '6', '7']);
    expect(levels.natural.missing).toEqual([]);
  });

  it('spells in the key of the song', () => {
    const { notes } = scaleMap(makeHarp('E'), 'B', 'minor pentatonic');
    expect(notes.map(({ name }) => name).join(' ')).toContain('F#4');
  });

  it('takes a harp too small for the scale', () => {
    const map = scaleMap(HARP, 'G', 'blues', { level: 'natural' });
    expect(map.notes.some(({ soundings }) => soundings.length === 0)).toBe(true);
  });

  it('throws for a scale, key and level there is not', () => {
    expect(() => scaleMap(HARP, 'G', 'blue')).toThrow(failure('SCALE_UNKNOWN'));
    expect(() => scaleMap(HARP, 'H' as 'B', 'blues')).toThrow(failure('KEY_UNKNOWN'));
    expect(() => scaleMap(HARP, 'G', 'blues', { level: 'x' as never })).toThrow(
      failure('OPTION_UNKNOWN'),
    );
  });
});

describe('scaleRun', () => {
  it('goes from the lowest tonic to the highest and back', () => {
    const run = scaleRun(HARP, 'C', 'major');
    expect(run[0]).toMatchObject({ name: 'C4', degree: '1' });
    expect(run.filter(({ name }) => name === 'C7')).toHaveLength(1);
    expect(run.at(-1)).toMatchObject({ name: 'C4' });
    expect(run).toHaveLength(2 * 22 - 1);
  });

  it('turns at the highest tonic, also where the harp goes on above it', () => {
    const run = scaleRun(HARP, 'G', 'mixolydian');
    expect(run[0]).toMatchObject({ name: 'G4', degree: '1' });
    expect(run[(run.length - 1) / 2]).toMatchObject({ name: 'G6', degree: '1' });
    expect(Math.max(...run.map(({ pitch }) => pitch))).toBe(91);
  });

  it('marks by null what cannot be sounded', () => {
    const run = scaleRun(HARP, 'C', 'major', { level: 'natural' });
    const silent = run.filter(({ sounding }) => sounding === null).map(({ name }) => name);
    expect(new Set(silent)).toEqual(new Set(['F4', 'A4', 'B6']));
  });

  it('takes of two unbent notes the one nearer to the hole before', () => {
    const run = scaleRun(HARP, 'G', 'major pentatonic', { level: 'bends' });
    // From the low end 2 draw; coming down from 3 draw also 2 or 3: the nearer hole, 3 blow.
    expect(run[0]?.sounding).toMatchObject({ hole: 2, breath: 'draw' });
    expect(run.at(-1)?.sounding).toMatchObject({ hole: 3, breath: 'blow' });
  });

  it('runs through all it spans on a harp without two tonics', () => {
    const small = makeHarp('C', {
      tuning: { ...tiny, holes: [{ hole: 1, blow: 62, draw: 64 }] },
    });
    expect(scaleRun(small, 'C', 'major').map(({ pitch }) => pitch)).toEqual([62, 64, 62]);
  });
});

const tiny = {
  id: 'tiny',
  name: 'Tiny',
  use: '',
  source: 'own construction',
  label: 'C',
  labelPosition: 1,
} as const;
