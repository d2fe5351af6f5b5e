import { describe, expect, it } from 'vitest';
import {
  makeHarp,
  makeTuning,
  readScala,
  reedsOf,
  TEMPERAMENTS,
  temperamentById,
  temperHarp,
} from './index.js';

const C_HARP = makeHarp('C');

describe('TEMPERAMENTS', () => {
  it('gives every temperament twelve degrees, the tonic at zero', () => {
    for (const { cents, octaveStretch } of TEMPERAMENTS) {
      expect(cents).toHaveLength(12);
      expect(cents[0]).toBe(0);
      expect(octaveStretch).toBe(0);
      expect(cents.every((value) => value !== null && Math.abs(value) < 35)).toBe(true);
    }
  });

  it('halves exactly the thirds of I and V in the compromise', () => {
    const just = temperamentById('nineteen-limit').cents;
    const halved = temperamentById('compromise').cents.map((value, degree) =>
      value === just[degree] ? null : Number(value) / Number(just[degree]),
    );
    expect(
      halved.map((ratio, degree) => (ratio === null ? null : [degree, ratio])).filter(Boolean),
    ).toEqual([
      [4, 0.5],
      [11, 0.5],
    ]);
  });
});

describe('temperamentById', () => {
  it('throws TEMPERAMENT_UNKNOWN and names the nearest', () => {
    expect(() => temperamentById('seven-limt')).toThrow(
      expect.objectContaining({ code: 'TEMPERAMENT_UNKNOWN', nearest: 'seven-limit' }),
    );
    expect(() => temperamentById('valueOf')).toThrow(
      expect.objectContaining({ code: 'TEMPERAMENT_UNKNOWN' }),
    );
  });
});

describe('temperHarp', () => {
  it('in equal temperament gives the frequencies of reedsOf', () => {
    const tuned = temperHarp(C_HARP, 'equal', { a4: 442 }).reeds.map(({ frequency }) => frequency);
    expect(tuned).toEqual(reedsOf(C_HARP, { a4: 442 }).map(({ frequency }) => frequency));
  });

  it('counts degrees from first position, in every key and label', () => {
    const centsOf = (harp: ReturnType<typeof makeHarp>) =>
      temperHarp(harp, 'seven-limit').reeds.map(({ cents }) => cents);
    expect(centsOf(makeHarp('Bb'))).toEqual(centsOf(C_HARP));
    const dorian = makeHarp('Gm', { tuning: 'dorian' });
    expect(centsOf(dorian)[0]).toBe(0);
  });

  it('takes cents for every reed', () => {
    const blow = [0, -10, 2, 0, -10, 2, 0, -10, 2, 0];
    const draw = [4, 2, -10, 4, -6, 4, -10, 4, -6, 4];
    const { reeds, temperament } = temperHarp(C_HARP, { blow, draw });
    expect(temperament).toBe('by-reed');
    expect(reeds.map(({ cents }) => cents)).toEqual(blow.flatMap((cents, i) => [cents, draw[i]]));
  });

  it('throws TEMPERAMENT_INCOMPLETE for a reed without a pitch', () => {
    expect(() => temperHarp(C_HARP, { blow: [0], draw: [0] })).toThrow(
      expect.objectContaining({
        code: 'TEMPERAMENT_INCOMPLETE',
        where: { hole: 2, breath: 'blow' },
      }),
    );
    const triad = readScala('triad\n3\n5/4\n3/2\n2/1');
    expect(() => temperHarp(C_HARP, triad)).toThrow(
      expect.objectContaining({
        code: 'TEMPERAMENT_INCOMPLETE',
        where: { hole: 1, breath: 'draw' },
      }),
    );
  });

  it('throws NUMBER_RANGE for cents that are none', () => {
    const wrong = { ...temperamentById('equal'), cents: Array<number>(12).fill(Number.NaN) };
    expect(() => temperHarp(C_HARP, wrong)).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE' }),
    );
    const most = { blow: Array<number>(10).fill(1200), draw: Array<number>(10).fill(-1200) };
    expect(temperHarp(C_HARP, most).reeds[0]?.cents).toBe(1200);
    const rows = { blow: Array<number>(10).fill(1200.5), draw: Array<number>(10).fill(0) };
    for (const wide of [rows, { blow: rows.draw, draw: Array<number>(10).fill(-1200.5) }]) {
      expect(() => temperHarp(C_HARP, wide)).toThrow(
        expect.objectContaining({ code: 'NUMBER_RANGE' }),
      );
    }
    expect(() => temperHarp(C_HARP, { blow: [] } as unknown as typeof rows)).toThrow(
      expect.objectContaining({ code: 'TEMPERAMENT_INCOMPLETE' }),
    );
  });

  it('tunes by any A from 300 to 600 Hz, the lowest and the highest too', () => {
    for (const a4 of [300, 600]) {
      expect(temperHarp(makeHarp('A'), 'equal', { a4 }).reeds[6]).toMatchObject({ frequency: a4 });
    }
  });

  it('takes A for 440 Hz where it is not told', () => {
    expect(temperHarp(C_HARP, 'equal')).toEqual(temperHarp(C_HARP, 'equal', { a4: 440 }));
  });

  it('moves a reed by its cents: 1200 sound an octave higher', () => {
    const blow = [1200, ...Array<number>(9).fill(0)];
    const { reeds } = temperHarp(C_HARP, { blow, draw: Array<number>(10).fill(-1200) });
    const plain = reedsOf(C_HARP).map(({ frequency }) => frequency);
    expect(reeds[0]?.frequency).toBeCloseTo(2 * Number(plain[0]), 9);
    expect(reeds[1]?.frequency).toBeCloseTo(Number(plain[1]) / 2, 9);
  });

  it.each([299.9, 600.1, 0, -440, Number.NaN, 10_000])('throws NUMBER_RANGE for A at %s', (a4) => {
    expect(() => temperHarp(C_HARP, 'equal', { a4 })).toThrow(
      expect.objectContaining({ code: 'NUMBER_RANGE', value: a4 }),
    );
  });

  it('stretches octaves from the lowest tonic within the harp', () => {
    const stretched = { ...temperamentById('equal'), octaveStretch: 2 };
    const blows = temperHarp(C_HARP, stretched).reeds.filter(({ breath }) => breath === 'blow');
    expect(blows.map(({ cents }) => cents)).toEqual([0, 0, 0, 2, 2, 2, 4, 4, 4, 6]);
  });

  it('stretches octaves from that tonic in every key, and the other way below it', () => {
    const stretched = { ...temperamentById('equal'), octaveStretch: 2 };
    const centsOf = (harp: ReturnType<typeof makeHarp>) =>
      temperHarp(harp, stretched).reeds.map(({ cents }) => cents);
    expect(centsOf(makeHarp('F'))).toEqual(centsOf(C_HARP));
    // The circular layout begins on the fifth of first position, a fourth below the tonic.
    const circular = makeHarp('G', { tuning: 'circular-second-draw' });
    expect(circular.holes.slice(0, 3).map(({ blow }) => blow)).toEqual([55, 59, 62]);
    expect(centsOf(circular).slice(0, 6)).toEqual([-2, -2, -2, 0, 0, 0]);
  });

  it('tunes a harp without its own tonic', () => {
    const tuning = makeTuning({ id: 'odd', blow: 'E4', draw: 'G4' });
    const { reeds } = temperHarp(makeHarp('C', { tuning }), 'five-limit');
    expect(reeds.map(({ cents }) => Math.round(cents * 10) / 10)).toEqual([-13.7, 2]);
  });
});

describe('readScala', () => {
  it('reads a scale of 1,024 notes, and none of more', () => {
    const scale = (notes: number) => [
      'many',
      notes,
      ...Array.from({ length: notes }, (_, at) => `${(1200 * (at + 1)) / notes}.`),
    ];
    const said = (notes: number) => {
      try {
        return readScala(scale(notes).join('\n')).cents.length;
      } catch (error) {
        return (error as Error).message;
      }
    };
    expect(said(1024)).toBe(12);
    expect(said(1025)).toMatch(/1 to 1024/u);
  });

  it('reads ratios, whole numbers as ratios, and cents', () => {
    const text = ['! a.scl', '!', 'Mixed', ' 12', '!', ...semitones(), '2'].join('\n');
    const read = readScala(text, { id: 'mixed' });
    expect(read).toMatchObject({ id: 'mixed', name: 'Mixed', octaveStretch: 0 });
    expect(read.cents.every((value) => value !== null && Math.abs(value) < 1e-9)).toBe(true);
  });

  it('reads what follows a pitch as a remark, and any line ending', () => {
    const read = readScala('x\r\n 2 notes\r\n 3/2 a fifth\r\n 1200. cents\r\n');
    expect(read.cents[7]).toBeCloseTo(1.955, 3);
  });

  it.each([
    ['letters', '5/4E', 386.314],
    ['a backslash', '5/4   E\\', 386.314],
    ['a comma', '386.3, a third', 386.3],
    ['letters after cents', '386.3cents', 386.3],
    ['letters after a whole number', '5E', null],
  ])('takes %s after a pitch for a remark: %j', (_, line, cents) => {
    const third = readScala(`x\n2\n${line}\n2/1`).cents[4];
    if (cents === null) expect(third).toBeNull();
    else expect(Number(third) + 400).toBeCloseTo(cents, 3);
  });

  it('reads a file that begins with a byte order mark', () => {
    const text = 'fifth\n2\n3/2\n2/1\n';
    expect(readScala(`\uFEFF${text}`)).toEqual(readScala(text));
    expect(readScala(`\uFEFF! a comment\n${text}`)).toEqual(readScala(text));
  });

  it('says why a scale of no notes, which the format allows, is refused', () => {
    expect(() => readScala('none\n0\n')).toThrow(
      expect.objectContaining({ expected: expect.stringContaining('tunes no reed') }),
    );
  });

  it('keeps the stretch of a wide octave', () => {
    expect(readScala('wide\n1\n1203.5').octaveStretch).toBeCloseTo(3.5, 9);
    expect(readScala('widest\n1\n1250.').octaveStretch).toBe(50);
  });

  it('takes the nearest of several pitches for a semitone', () => {
    expect(readScala('two\n3\n680.\n705.\n2/1').cents[7]).toBeCloseTo(5, 9);
  });

  it.each([
    ['', 2],
    ['only a description', 2],
    ['x\nmany\n2/1', 2],
    ['x\n0', 2],
    ['x\n2\n3/2', 4],
    ['x\n1\ntwo', 3],
    ['x\n1\n2/0', 3],
    ['x\n1\n0/2', 3],
    ['x\n1\n1250.1', 3],
    ['x\n1\n-3/2', 3],
    ['x\n1\n3/1', 3],
    ['x\n1\n2/', 3],
    ['x\n1\n2/x', 3],
    ['x\n1\n1234567890123456/1', 3],
    ['! c\nx\n! c\n2\n3/2\n! c\n.', 7],
  ])('throws SCALA_SYNTAX for %j at line %i', (text, line) => {
    expect(() => readScala(text)).toThrow(
      expect.objectContaining({ code: 'SCALA_SYNTAX', where: { line } }),
    );
  });

  it('throws SCALA_SYNTAX for what is no text', () => {
    expect(() => readScala(null as unknown as string)).toThrow(
      expect.objectContaining({ code: 'SCALA_SYNTAX' }),
    );
  });
});

function semitones(): string[] {
  return Array.from({ length: 11 }, (_, index) => `${index + 1}00.0`);
}
