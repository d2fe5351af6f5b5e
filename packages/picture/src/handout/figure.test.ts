import { ReedplateError } from '@reedplate/pitch';
import { describe, expect, it } from 'vitest';
import { harpPicture } from '../harp/harp-picture.js';
import { figure } from './figure.js';

describe('figure', () => {
  it('figure draws for paper and for a telephone', () => {
    const widths: number[] = [];
    const html = figure((width) => {
      widths.push(width);
      return harpPicture('C', { width });
    });
    expect(widths).toEqual([680, 304]);
    expect(html).toMatch(
      /^<figure class="wide"><svg [\s\S]+<\/figure>\n<figure class="narrow"><svg /u,
    );
    expect(html).not.toContain('tabindex');
  });

  it('figure draws once what a telephone cannot hold, to be moved by keyboard', () => {
    const html = figure((width) => {
      if (width < 680)
        throw new ReedplateError({ code: 'NUMBER_RANGE', value: width, expected: '680' });
      return harpPicture('C', { width });
    });
    expect(html).toMatch(/^<figure tabindex="0"><svg /u);
    expect(html.match(/<svg /gu)).toHaveLength(1);
  });

  it.each([
    new ReedplateError({ code: 'HARP_INVALID', value: 'H', expected: 'a harp' }),
    new RangeError('no error of ours'),
  ])('figure hides no other error: %s', (error) => {
    const draw = (width: number) => {
      if (width < 680) throw error;
      return harpPicture('C', { width });
    };
    expect(() => figure(draw)).toThrow(error);
  });
});
