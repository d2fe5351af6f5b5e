import { TONICS } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { THEME_IDS } from '../theme/themes.js';
import { positionPicture } from './position-picture.js';

describe('positionPicture', () => {
  it.each(THEME_IDS)('positionPicture keeps every text apart in theme %s', (theme) => {
    for (const key of TONICS) {
      for (const width of [320, 680]) {
        expect(textComplaints(positionPicture(key, { theme, width, harps: ['C'] }).svg)).toEqual(
          [],
        );
      }
    }
  });

  it('positionPicture has the harp of 1st position at the top and 2nd against the clock', () => {
    const boxes = textBoxes(positionPicture('G').svg);
    const find = (text: string) => boxes.find((box) => box.text === text);
    const [first, second, twelfth] = ['1st', '2nd', '12th'].map(find);
    expect(first?.top).toBeLessThan(second?.top ?? 0);
    expect(second?.left).toBeLessThan(first?.left ?? 0);
    expect(twelfth?.left).toBeGreaterThan(first?.left ?? 0);
  });

  it('positionPicture names twelve harps, and those at hand by their tuning', () => {
    const { text } = positionPicture('Am', { harps: ['D', 'Am natural-minor'] });
    expect(text.split('\n')).toHaveLength(13);
    expect(text).toContain('2nd position (cross harp): D harp, at hand: D, Am natural-minor');
    expect(text).toContain('1st position (straight harp): A harp');
  });

  it.each(THEME_IDS)(
    'positionPicture keeps every two harps of theme %s apart, at any width',
    (theme) => {
      for (const width of [200, 240, 320, 480, 680, 2000]) {
        const { svg } = positionPicture('G', { theme, width, harps: ['C'] });
        const discs = [...svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="([\d.]+)"/gu)]
          .map(([, x, y, r]) => ({ x: Number(x), y: Number(y), r: Number(r) }))
          .slice(1, 13);
        expect(discs).toHaveLength(12);
        for (const [at, one] of discs.entries()) {
          for (const other of discs.slice(at + 1)) {
            expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(
              one.r + other.r + 3,
            );
          }
        }
      }
    },
  );
});
