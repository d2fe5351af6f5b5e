import { parseKey } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { makeHarp, soundingsAt, soundingsOfPitch, TUNINGS } from './index.js';
import { toHarp } from './to-harp.js';
import { toTemperament } from './to-temperament.js';
import { toTuning } from './to-tuning.js';

const invalid = (details: object) => expect.objectContaining({ code: 'HARP_INVALID', ...details });
const C = makeHarp('C');

/** A standard harp whose hole of an index is another. */
const withHole = (index: number, changed: object) =>
  ({
    ...C,
    holes: C.holes.map((hole, at) => (at === index ? { ...hole, ...changed } : hole)),
  }) as typeof C;

describe('toHarp', () => {
  test('toHarp takes a harp, its name, or a key for the standard harp in it', () => {
    expect(toHarp(C)).toBe(C);
    expect(toHarp('low F')).toEqual(makeHarp('F', { register: 'low' }));
    expect(toHarp(parseKey('Eb'))).toEqual(makeHarp('Eb'));
    for (const none of [null, 3, {}, [], { name: 'C' }]) {
      expect(() => toHarp(none as never)).toThrow(invalid({}));
    }
  });

  test.each([
    [0, { hole: 0 }, { path: 'holes[0]' }],
    [1, { hole: 17 }, { path: 'holes[1]' }],
    [1, { hole: 2.5 }, { path: 'holes[1]' }],
    [3, { blow: 1 }, { hole: 4, breath: 'blow' }],
    [9, { draw: 127 }, { hole: 10, breath: 'draw' }],
    [4, { draw: 60.5 }, { hole: 5, breath: 'draw' }],
  ])('toHarp refuses a harp whose hole at %i has %j, and says where', (index, changed, where) => {
    expect(() => toHarp(withHole(index, changed))).toThrow(invalid({ where }));
  });

  test('toHarp takes reeds as low and as high as can still be bent within MIDI', () => {
    for (const reed of [2, 126]) expect(() => toHarp(withHole(0, { blow: reed }))).not.toThrow();
  });
});

describe('toTuning and toTemperament', () => {
  test('toTuning refuses what lacks the holes or the label of a tuning', () => {
    const [{ holes, labelPosition }] = TUNINGS as [(typeof TUNINGS)[number]];
    for (const part of [{ labelPosition }, { holes }, { labelPosition, holes: 10 }, null, []]) {
      expect(() => toTuning(part as never)).toThrow(
        expect.objectContaining({ code: 'TUNING_INVALID' }),
      );
    }
  });

  test('toTemperament takes the first of one’s own with an id, before one of the catalogue', () => {
    const own = (name: string) => ({
      id: 'equal',
      name,
      cents: Array(12).fill(0),
      octaveStretch: 0,
    });
    const temperaments = [own('mine'), own('another')] as never;
    expect(toTemperament('equal', { temperaments })).toMatchObject({ name: 'mine' });
  });
});

test('soundingsOfPitch and soundingsAt give lists that nobody can change for another', () => {
  for (const pitch of [60, 67, 127]) expect(Object.isFrozen(soundingsOfPitch(C, pitch))).toBe(true);
  expect(Object.isFrozen(soundingsAt(C, 4, 'draw'))).toBe(true);
});
