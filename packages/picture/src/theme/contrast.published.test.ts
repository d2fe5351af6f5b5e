import { describe, expect, it } from 'vitest';
import { published } from '../../../../test/sources/published.js';
import { contrastOf, type Hex } from './contrast.js';

describe('contrastOf against the figures of Understanding WCAG 2.1, Non-text Contrast', () => {
  published('wcag-contrast', 'contrasts of the figures', () => {
    it.each<[Hex, Hex, number]>([
      ['#949494', '#ffffff', 3],
      ['#e5e5e5', '#6221ea', 5.6],
      ['#fff000', '#ffffff', 1.2],
    ])('%s on %s is %d to 1, printed to one place', (one, other, printed) => {
      // 5.699 is printed as 5.6 and 1.163 as 1.2: some are cut, some rounded.
      expect(Math.abs(contrastOf(one, other) - printed)).toBeLessThan(0.1);
    });

    it.each<[string, Hex, Hex]>([
      ['grey border on white', '#767676', '#ffffff'],
      ['white input on dark blue', '#ffffff', '#003366'],
      ['grey circle on white', '#949494', '#ffffff'],
      ['yellow within a blue button', '#ffff00', '#4189b9'],
      ['green outside, on white', '#008000', '#ffffff'],
    ])('passes at 3 to 1: %s', (_, one, other) => {
      expect(contrastOf(one, other)).toBeGreaterThanOrEqual(3);
    });

    it.each<[string, Hex, Hex]>([
      ['yellow on white, in stars', '#fff000', '#ffffff'],
      ['yellow outside, on white', '#ffff00', '#ffffff'],
      ['a border that turns from blue to green', '#4189b9', '#4b933a'],
      ['dark green within a blue button', '#008000', '#4189b9'],
    ])('fails at 3 to 1: %s', (_, one, other) => {
      expect(contrastOf(one, other)).toBeLessThan(3);
    });

    it('is not rounded to a threshold: 4.499 does not meet 4.5 (1.4.3, note)', () => {
      const contrast = contrastOf('#777777', '#ffffff');
      expect(contrast).toBeLessThan(4.5);
      expect(contrast.toFixed(3)).toBe(`${contrast}`);
    });
  });
});
