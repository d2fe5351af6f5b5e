import { describe, expect, it } from 'vitest';
import {
  makeHarp,
  makeTuning,
  missingPitches,
  parseHarp,
  reedsOf,
  retuningPlan,
  soundings,
  soundingsAt,
  soundingsOfPitch,
  type Temperament,
  temperamentById,
  temperHarp,
} from './index.js';
import { toHarp } from './to-harp.js';
import { toTemperament } from './to-temperament.js';
import { toTuning } from './to-tuning.js';

const failure = (code: string, details: object = {}) =>
  expect.objectContaining({ code, ...details });

// A harp of three holes, as someone builds one to try a chord: C E G blown, D G B drawn.
const TRIAD = makeTuning({ id: 'triad', aliases: ['three'], blow: 'C4 E4 G4', draw: 'D4 G4 B4' });
const RAISED = makeTuning({ id: 'raised-triad', blow: 'C4 E4 A4', draw: 'D4 G4 B4' });
const known = { tunings: [TRIAD, RAISED] };
const harp = makeHarp('A', { tuning: TRIAD });

describe('a harp in a tuning of one’s own', () => {
  it('is found by its name wherever a harp is asked for', () => {
    for (const name of ['A triad', 'A three']) {
      expect(parseHarp(name, { known })).toEqual(harp);
      expect(toHarp(name, known)).toEqual(harp);
      expect(soundings(name, { known })).toEqual(soundings(harp));
      expect(soundingsAt(name, 2, 'draw', { known })).toEqual(soundingsAt(harp, 2, 'draw'));
      expect(soundingsOfPitch(name, 61, { known })).toEqual(soundingsOfPitch(harp, 61));
      expect(missingPitches(name, { known })).toEqual(missingPitches(harp));
      expect(temperHarp(name, 'equal', { known }).reeds).toEqual(temperHarp(harp, 'equal').reeds);
    }
  });

  it('is not known to anyone who has not been given it', () => {
    expect(() => toHarp('A triad')).toThrow(failure('TUNING_UNKNOWN', { value: 'triad' }));
    expect(() => toHarp('A triad', {})).toThrow(failure('TUNING_UNKNOWN'));
    expect(() => toHarp('A triad', { tunings: [] })).toThrow(failure('TUNING_UNKNOWN'));
  });

  it('can be retuned to another of one’s own', () => {
    const { steps } = retuningPlan('C triad', 'C raised-triad', { known });
    const worked = steps.filter(({ remedy }) => remedy !== 'leave');
    expect(worked).toEqual([
      { hole: 3, breath: 'blow', from: 67, to: 69, cents: 200, remedy: 'file-tip' },
    ]);
  });

  it('keeps its name in the list of harps, and its reeds in its key', () => {
    expect(reedsOf(parseHarp('A triad', { known })).map(({ name }) => name)).toEqual([
      'A3',
      'B3',
      'C#4',
      'E4',
      'E4',
      'G#4',
    ]);
  });
});

describe('two of one’s own with one name', () => {
  it('toTuning takes the first, before one of the catalogue', () => {
    const mine = makeTuning({ id: 'standard', blow: 'C4', draw: 'D4' });
    const older = makeTuning({ id: 'standard', blow: 'C4 E4', draw: 'D4 G4' });
    expect(toTuning('standard', { tunings: [mine, older] })).toBe(mine);
    expect(toTuning('standard', { tunings: [older, mine] })).toBe(older);
  });

  it('toTemperament takes the first, before one of the catalogue', () => {
    const mine: Temperament = { ...temperamentById('equal'), octaveStretch: 1 };
    const older: Temperament = { ...temperamentById('equal'), octaveStretch: 2 };
    expect(toTemperament('equal', { temperaments: [mine, older] })).toBe(mine);
    expect(toTemperament('equal', { temperaments: [older, mine] })).toBe(older);
  });
});

describe('known', () => {
  it.each([
    [{ tunings: TRIAD }, 'known.tunings'],
    [{ tunings: 'triad' }, 'known.tunings'],
    [{ tunings: [null] }, 'known.tunings'],
    [{ tunings: [{ name: 'no id' }] }, 'known.tunings'],
    [{ tunings: [TRIAD, 'triad'] }, 'known.tunings'],
    [{ temperaments: {} }, 'known.temperaments'],
    [{ temperaments: [{ cents: [] }] }, 'known.temperaments'],
  ])('is refused where it is %j: no list of what has an id', (wrong, path) => {
    const where = expect.objectContaining({ path: expect.stringContaining(path) });
    for (const ask of [
      () => toTuning('standard', wrong as never),
      () => toTemperament('equal', wrong as never),
    ]) {
      expect(ask).toThrow(failure('TUNING_INVALID', { where }));
    }
  });

  it('names the nearest of its two lists for a word that it does not take', () => {
    expect(() => toTuning('standard', { tuning: [TRIAD] } as never)).toThrow(
      failure('OPTION_UNKNOWN', { nearest: 'tunings' }),
    );
  });

  it('helps to spell one’s own: the nearest name is looked for there too', () => {
    expect(() => toTuning('triat', known)).toThrow(failure('TUNING_UNKNOWN', { nearest: 'triad' }));
    const temperaments = [{ ...temperamentById('equal'), id: 'mean-tone' }];
    expect(() => toTemperament('meantone', { temperaments })).toThrow(
      failure('TEMPERAMENT_UNKNOWN', { nearest: 'mean-tone' }),
    );
  });
});

describe('what is given as data', () => {
  it.each([3, undefined, true, 'x'])('is no tuning and no temperament where it is %j', (value) => {
    const code = typeof value === 'string' ? 'TUNING_UNKNOWN' : 'TUNING_INVALID';
    expect(() => toTuning(value as never)).toThrow(failure(code));
    expect(() => toTemperament(value as never)).toThrow(failure('TEMPERAMENT_UNKNOWN'));
  });

  it.each([
    { cents: Array(12).fill(0), octaveStretch: 0 },
    { id: 'own', cents: 0, octaveStretch: 0 },
    { id: 'own', cents: Array(12).fill(0) },
    { draw: [0] },
    null,
  ])('is no temperament where a part of one is missing: %j', (part) => {
    expect(() => toTemperament(part as never)).toThrow(failure('TEMPERAMENT_UNKNOWN'));
  });

  it('is a tuning only with reeds that can be played', () => {
    const holes = [{ hole: 1, blow: 0, draw: 2 }];
    expect(() => toTuning({ ...TRIAD, holes } as never)).toThrow(
      failure('TUNING_INVALID', { value: 0, where: { hole: 1, breath: 'blow' } }),
    );
    expect(() => toTuning({ ...TRIAD, holes: [] })).toThrow(
      failure('TUNING_INVALID', { where: { path: 'holes' } }),
    );
    const many = Array.from({ length: 17 }, () => TRIAD.holes[0]);
    expect(() => toTuning({ ...TRIAD, holes: many } as never)).toThrow(failure('TUNING_INVALID'));
  });
});
