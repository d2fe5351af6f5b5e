import { describe, expect, it } from 'vitest';
import { roleOf } from './chord-role.js';

describe('roleOf', () => {
  it.each([
    ['I7', 'one'],
    ['i7', 'one'],
    ['IV7', 'four'],
    ['iv', 'four'],
    ['V7#9', 'five'],
    ['ii7', 'other'],
    ['III7', 'other'],
    ['VI7', 'other'],
    ['VII7', 'other'],
    ['bVI7', 'other'],
    ['#ivdim7', 'other'],
    ['V7/V', 'other'],
    [null, 'other'],
  ])('roleOf(%s) is %s', (numeral, role) => {
    expect(roleOf(numeral)).toBe(role);
  });
});
