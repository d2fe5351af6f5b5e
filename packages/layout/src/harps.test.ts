import { midi, parseKey, TONICS } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import {
  harpName,
  harpRange,
  makeHarp,
  makeTuning,
  missingPitches,
  parseHarp,
  type Register,
  readHarp,
  reedsOf,
  transposeHarp,
  tuningById,
} from './index.js';

const failure = (details: object) => expect.objectContaining({ code: 'HARP_INVALID', ...details });

describe('makeHarp', () => {
  it('reads the key by the labelling convention of the tuning', () => {
    expect(makeHarp('Gm', { tuning: 'natural-minor' }).holes[0]?.blow).toBe(midi('C4'));
    expect(makeHarp('Cm', { tuning: 'harmonic-minor' }).holes[0]?.blow).toBe(midi('C4'));
    const circular = makeHarp('G', { tuning: 'circular-second-draw' });
    expect(circular.holes[0]?.blow).toBe(midi('G3'));
    expect(circular.firstPosition).toBe('C');
    const melody = makeHarp('G', { tuning: 'raised-third-blow-and-fifth-and-ninth-draw' });
    expect(melody.holes[0]?.blow).toBe(midi('C4'));
    expect(melody.firstPosition).toBe('C');
  });

  it('takes a tonic alone for a minor label, in its own spelling', () => {
    expect(makeHarp('A', { tuning: 'natural-minor' }).key).toBe('Am');
    expect(makeHarp('G#', { tuning: 'natural-minor' })).toMatchObject({
      key: 'G#m',
      firstPosition: 'C#',
    });
  });

  it('gives equal harps however the key is written, and others for other spellings', () => {
    expect(makeHarp(parseKey('c'))).toEqual(makeHarp('C'));
    expect(makeHarp('G', { tuning: 'natural-minor' })).toEqual(
      makeHarp('Gm', { tuning: 'natural-minor' }),
    );
    expect(makeHarp('Gb')).not.toEqual(makeHarp('F#'));
  });

  it('builds a tuning given as data, even under an id of the catalogue', () => {
    const own = makeTuning({ id: 'standard', blow: 'C4', draw: 'D4' });
    expect(makeHarp('C', { tuning: own }).holes).toHaveLength(1);
    expect(makeHarp('C').holes).toHaveLength(10);
  });

  it('throws HARP_INVALID for a minor key where harps are named by major ones', () => {
    expect(() => makeHarp('Am')).toThrow(failure({ value: 'Am', nearest: 'A' }));
  });

  it('takes a tuning of one’s own, whatever key its rows are written in', () => {
    const inA = makeTuning({ id: 'mine', label: 'A', blow: 'A3 C#4', draw: 'B3 E4' });
    expect(makeHarp('A', { tuning: inA }).holes).toEqual(inA.holes);
    expect(makeHarp('G', { tuning: inA }).holes[0]?.blow).toBe(midi('G3'));
    expect(makeHarp('F#', { tuning: inA }).holes[0]?.blow).toBe(midi('F#4'));
  });

  it('throws HARP_INVALID where a register puts reeds out of range', () => {
    const high = makeTuning({ id: 'high', blow: [120], draw: [122] });
    expect(() => makeHarp('C', { tuning: high, register: 'high' })).toThrow(
      failure({ where: { hole: 1, breath: 'blow' } }),
    );
  });

  it('takes reeds from the lowest to the highest that still bend and overblow within MIDI', () => {
    const ends = makeTuning({ id: 'ends', blow: [2, 126], draw: [4, 124] });
    expect(makeHarp('C', { tuning: ends }).holes.map(({ blow }) => blow)).toEqual([2, 126]);
  });

  it('throws TUNING_INVALID for a tuning, not made by makeTuning, with half a semitone', () => {
    const holes = [{ hole: 1, blow: 60.5, draw: 62 }] as const;
    const tuning = { ...tuningById('standard'), holes };
    expect(() => makeHarp('C', { tuning })).toThrow(
      expect.objectContaining({ code: 'TUNING_INVALID', value: 60.5 }),
    );
  });

  it('throws for a key, a tuning and a register there is not', () => {
    expect(() => makeHarp('H' as 'B')).toThrow(expect.objectContaining({ code: 'KEY_UNKNOWN' }));
    expect(() => makeHarp('C', { tuning: 'nope' })).toThrow(
      expect.objectContaining({ code: 'TUNING_UNKNOWN' }),
    );
    expect(() => makeHarp('C', { register: 'tenor' as Register })).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN' }),
    );
  });
});

describe('transposeHarp', () => {
  it('moves the register where the key passes from F# to G', () => {
    expect(transposeHarp(makeHarp('F#'), 1)).toEqual(makeHarp('G', { register: 'high' }));
    expect(transposeHarp(makeHarp('G'), -1)).toEqual(makeHarp('F#', { register: 'low' }));
    expect(transposeHarp(makeHarp('C'), 12)).toEqual(makeHarp('C', { register: 'high' }));
  });

  it('keeps the labelling convention', () => {
    const moved = transposeHarp(makeHarp('Gm', { tuning: 'natural-minor' }), 2);
    expect(moved).toEqual(makeHarp('Am', { tuning: 'natural-minor' }));
  });

  it('throws NUMBER_RANGE for no whole number and HARP_INVALID beyond the registers', () => {
    expect(() => transposeHarp(makeHarp('C'), 0.5)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
    expect(() => transposeHarp(makeHarp('C'), 128)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
    expect(() => transposeHarp(makeHarp('C'), 24)).toThrow(failure({ value: 'standard' }));
    expect(() => transposeHarp(makeHarp('C'), -40)).toThrow(failure({ value: 'standard' }));
  });
});

describe('harpName and parseHarp', () => {
  it.each(['C', 'low F', 'low-low F', 'high G', 'Am natural-minor', 'low Gm natural-minor'])(
    'agree on %s',
    (name) => {
      expect(harpName(parseHarp(name))).toBe(name);
    },
  );

  it('parseHarp reads loose spelling', () => {
    expect(harpName(parseHarp('  LOW   f '))).toBe('low F');
  });

  it.each(['', 'low', 'low C standard more', 7 as unknown as string])(
    'parseHarp throws HARP_INVALID for %j',
    (name) => {
      expect(() => parseHarp(name)).toThrow(failure({ value: name }));
    },
  );
});

describe('readHarp', () => {
  const plain = JSON.parse(JSON.stringify(makeHarp('Gm', { tuning: 'natural-minor' })));

  it('gives back a harp written as JSON, frozen', () => {
    const read = readHarp(plain);
    expect(read).toEqual(makeHarp('Gm', { tuning: 'natural-minor' }));
    expect(Object.isFrozen(read.holes[0])).toBe(true);
  });

  it.each([
    ['register', 'tenor'],
    ['key', 'H'],
    ['key', undefined],
    ['firstPosition', 'D'],
    ['firstPosition', 'H'],
    ['tuning', 'Two Words'],
    ['holes', []],
    ['holes', 'C4'],
  ])('throws HARP_INVALID for %s %j', (field, value) => {
    expect(() => readHarp({ ...plain, [field]: value })).toThrow(failure({}));
  });

  it.each([null, [], 3])('throws HARP_INVALID for %j', (value) => {
    expect(() => readHarp(value)).toThrow(failure({ value }));
  });

  it('reads text, and throws JSON_MALFORMED for text that is no JSON', () => {
    expect(readHarp(JSON.stringify(plain))).toEqual(readHarp(plain));
    expect(() => readHarp('C')).toThrow(expect.objectContaining({ code: 'JSON_MALFORMED' }));
  });

  it('refuses a field it does not know', () => {
    expect(() => readHarp({ ...plain, regsiter: 'low' })).toThrow(
      failure({ value: 'regsiter', nearest: 'register' }),
    );
  });

  it('names the reed that is wrong', () => {
    const holes = plain.holes.map((reeds: { hole: number }) =>
      reeds.hole === 4 ? { ...reeds, draw: 'D5!' } : reeds,
    );
    expect(() => readHarp({ ...plain, holes })).toThrow(
      failure({ value: 'D5!', where: { hole: 4, breath: 'draw' } }),
    );
  });
});

describe('reedsOf', () => {
  const names = (harp: ReturnType<typeof makeHarp>) => reedsOf(harp).map(({ name }) => name);

  it('spells a raised fifth draw reed as the leading note of cross harp', () => {
    expect(names(makeHarp('C', { tuning: 'raised-fifth-draw' }))[9]).toBe('F#5');
    expect(names(makeHarp('Ab', { tuning: 'raised-fifth-draw' }))[9]).toBe('D5');
    expect(names(makeHarp('A', { tuning: 'raised-fifth-draw' }))[9]).toBe('D#5');
  });

  it('spells lowered reeds as flats', () => {
    const minor = names(makeHarp('Gm', { tuning: 'natural-minor' }));
    expect(minor.slice(2, 6)).toEqual(['Eb4', 'G4', 'G4', 'Bb4']);
  });

  it('counts the octave by the letter', () => {
    expect(names(makeHarp('Cb'))[0]).toBe('Cb4');
    expect(names(makeHarp('C#'))[5]).toBe('B#4');
  });

  it('never mixes sharps and flats in one harp, and never doubles them', () => {
    for (const tonic of TONICS) {
      const signs = names(makeHarp(tonic)).map((name) => name.slice(1).replaceAll(/\d/gu, ''));
      const kinds = new Set(signs.filter((sign) => sign !== ''));
      expect(kinds.size).toBeLessThanOrEqual(1);
      expect(kinds).not.toContain('##');
      expect(kinds).not.toContain('bb');
    }
  });

  it('gives frequencies from a chosen A', () => {
    const harp = makeHarp('A');
    expect(reedsOf(harp)[6]?.frequency).toBe(440);
    expect(reedsOf(harp, { a4: 443 })[6]?.frequency).toBe(443);
  });
});

describe('harpRange and missingPitches', () => {
  it('harpRange looks at both rows', () => {
    expect(harpRange(makeHarp('C', { tuning: 'augmented' }))).toEqual({ lowest: 60, highest: 99 });
  });

  it('missingPitches refuses a range beyond MIDI or upside down, and names the nearest option', () => {
    const harp = makeHarp('C');
    for (const range of [
      { lowest: -1 },
      { lowest: Number.NEGATIVE_INFINITY },
      { highest: 128 },
      { highest: Number.POSITIVE_INFINITY },
      { lowest: 60.5 },
      { lowest: 61, highest: 60 },
    ]) {
      expect(() => missingPitches(harp, range)).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE' }),
      );
    }
    expect(() => missingPitches(harp, { lowset: 60 } as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', nearest: 'lowest' }),
    );
  });

  it('missingPitches takes a range of its own', () => {
    const harp = makeHarp('C');
    expect(missingPitches(harp, { level: 'natural', lowest: 60, highest: 67 })).toEqual([
      61, 63, 65, 66,
    ]);
    expect(missingPitches(harp, { level: 'overbends', lowest: 96, highest: 99 })).toEqual([98, 99]);
    expect(missingPitches(harp, { valved: true, lowest: 60, highest: 64 })).toEqual([]);
  });

  // Computed from the rule on published and remembered rows.
  it.each([
    ['diminished', [], []],
    ['augmented', [], []],
    ['harmonic-minor', ['F#5', 'A5', 'Bb5', 'Db6', 'E6'], ['Bb5']],
    [
      'lowered-second-and-third-draw',
      ['Eb4', 'F#4', 'Bb4', 'B4', 'Eb5', 'F#5', 'Bb5', 'Db6', 'Ab6'],
      ['B4'],
    ],
    ['whole-tone-wide', ['Eb4', 'G4', 'B4', 'Eb5', 'G5', 'B5', 'Eb6', 'G6', 'B6'], []],
    ['circular-first-blow', ['Eb4', 'F#4', 'Bb4', 'Db5', 'Ab5', 'Eb6', 'F#6'], []],
    ['circular-second-draw', ['Bb3', 'Db4', 'Ab4', 'Eb5', 'F#5', 'Bb5', 'Db6'], []],
    ['dorian', ['Eb4', 'B4', 'Eb5', 'F#5', 'Db6', 'Ab6'], []],
    ['natural-minor', ['B4', 'F#5', 'Db6', 'E6', 'Ab6'], []],
    ['solo-twelve', ['Eb4', 'F#4', 'Bb4', 'Eb5', 'F#5', 'Bb5', 'Eb6', 'F#6', 'Bb6'], []],
  ])('missingPitches of %s are known with bends and with overbends', (id, bends, overbends) => {
    const tuning = tuningById(id);
    const harp = makeHarp(tuning.label, { tuning });
    expect(missingPitches(harp, { level: 'bends' })).toEqual(bends.map(midi));
    expect(missingPitches(harp, { level: 'overbends' })).toEqual(overbends.map(midi));
  });
});
