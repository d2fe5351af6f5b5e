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
});
