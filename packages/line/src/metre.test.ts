import { describe, expect, test } from 'vitest';
import { parseMetre } from './metre.js';

describe('parseMetre', () => {
  // Felt beats of compound metres: common practice, no source.
  test.each([
    ['4/4', 3840, 960, 4],
    ['3/4', 2880, 960, 3],
    ['2/2', 3840, 1920, 2],
    ['5/4', 4800, 960, 5],
    ['3/8', 1440, 480, 3],
    ['6/8', 2880, 1440, 2],
    ['7/8', 3360, 480, 7],
    ['9/8', 4320, 1440, 3],
    ['12/8', 5760, 1440, 4],
    ['6/4', 5760, 960, 6],
    ['12/16', 2880, 720, 4],
    ['1/1', 3840, 3840, 1],
    ['32/1', 122880, 3840, 32],
  ])('gives %s a bar of %i ticks and beats of %i', (metre, barTicks, beatTicks, beatsPerBar) => {
    expect(parseMetre(metre)).toMatchObject({ barTicks, beatTicks, beatsPerBar });
  });

  test('gives the numbers as written, frozen', () => {
    expect(parseMetre('12/8')).toMatchObject({ numerator: 12, denominator: 8 });
    expect(Object.isFrozen(parseMetre('12/8'))).toBe(true);
  });

  test.each<[unknown, string | undefined]>([
    ['4/5', '4/4'],
    ['6/9', '6/8'],
    ['12/', '12/8'],
    ['33/4', '3/4'],
    ['0/4', '4/4'],
    ['04/4', '4/4'],
    ['4/4 ', '4/4'],
    ['-4/4', '4/4'],
    ['4.5/4', '4/4'],
    ['common', undefined],
    ['', undefined],
    ['valueOf', undefined],
    ['__proto__', undefined],
    ['4'.repeat(100_000), undefined],
    [4, undefined],
    [null, undefined],
    [undefined, undefined],
    [['4/4'], undefined],
  ])('refuses %j and suggests %s', (metre, nearest) => {
    expect(() => parseMetre(metre as string)).toThrow(
      expect.objectContaining({ code: 'METRE_UNKNOWN', value: metre, nearest }),
    );
  });
});
