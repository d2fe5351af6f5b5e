import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PictureOptions } from '../picture.js';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { THEME_IDS, THEMES } from '../theme/themes.js';
import { finishPicture, makeFrame, tooNarrow } from './frame.js';

const errorOf = (options: object) => {
  try {
    makeFrame(options as PictureOptions, 'usual');
  } catch (error) {
    return error;
  }
  return undefined;
};

const EMPTY = { description: 'nothing', text: 'nothing', nodes: [], bottom: 100 };

describe('makeFrame', () => {
  it('makeFrame sets any title in lines that fit, above the content', () => {
    fc.assert(
      fc.property(
        fc.stringMatching(/^\S[a-zA-Z0-9 ]{0,198}$/u),
        fc.integer({ min: 200, max: 1200 }),
        fc.constantFrom(...THEME_IDS),
        (title, width, theme) => {
          const frame = makeFrame({ title, width, theme }, 'usual');
          const { svg } = finishPicture(frame, EMPTY, 2000);
          expect(textComplaints(svg)).toEqual([]);
          for (const { bottom } of textBoxes(svg)) expect(bottom).toBeLessThan(frame.top);
          expect(
            textBoxes(svg)
              .map(({ text }) => text)
              .join('')
              .replaceAll(' ', ''),
          ).toBe(title.replaceAll(' ', ''));
        },
      ),
      { numRuns: 50 },
    );
  });

  it('makeFrame takes the usual title, theme and width where none is given', () => {
    const frame = makeFrame({}, 'usual');
    expect([frame.title, frame.theme, frame.width]).toEqual(['usual', THEMES.screen, 680]);
    expect(makeFrame({ title: '  Lesson 1 ' }, 'usual').title).toBe('Lesson 1');
  });

  it.each([
    [{ width: 199 }, 'NUMBER_RANGE'],
    [{ width: 4001 }, 'NUMBER_RANGE'],
    [{ width: 320.5 }, 'NUMBER_RANGE'],
    [{ width: '320' }, 'NUMBER_RANGE'],
    [{ width: Number.NaN }, 'NUMBER_RANGE'],
    [{ title: '' }, 'OPTION_UNKNOWN'],
    [{ title: 7 }, 'OPTION_UNKNOWN'],
    [{ title: 'x'.repeat(201) }, 'OPTION_UNKNOWN'],
    [{ theme: 'toString' }, 'OPTION_UNKNOWN'],
    [{ theme: null }, 'OPTION_UNKNOWN'],
    [{ title: null }, 'OPTION_UNKNOWN'],
    [{ width: null }, 'NUMBER_RANGE'],
    [{ theme: { ...THEMES.print, textSize: 9 } }, 'NUMBER_RANGE'],
    [{ theme: { ...THEMES.print, textSize: 97 } }, 'NUMBER_RANGE'],
  ])('makeFrame refuses %j', (options, code) => {
    const error = errorOf(options);
    expect(isReedplateError(error)).toBe(true);
    expect(error).toMatchObject({ code });
    expect(JSON.parse(JSON.stringify(error))).toMatchObject({ code });
  });

  it('makeFrame takes the bounds of width and text themselves', () => {
    for (const width of [200, 4000]) expect(makeFrame({ width }, 'usual').width).toBe(width);
    for (const textSize of [10, 96]) {
      expect(errorOf({ theme: { ...THEMES.print, textSize } })).toBeUndefined();
    }
  });
});

describe('finishPicture', () => {
  it('finishPicture is as high as its drawing, or as is asked', () => {
    const frame = makeFrame({}, 'usual');
    expect(finishPicture(frame, EMPTY).height).toBe(Math.ceil(100 + frame.left));
    expect(finishPicture(frame, EMPTY, 500).height).toBe(500);
  });

  it('finishPicture has an id that changes with title, description and drawing', () => {
    const idOf = (title: string, description: string): string =>
      /id="(rp-[0-9a-f]{8})-title"/u.exec(
        finishPicture(makeFrame({ title }, 'usual'), { ...EMPTY, description }).svg,
      )?.[1] ?? '';
    const ids = [idOf('a', 'b'), idOf('a', 'c'), idOf('b', 'b')];
    expect(ids).not.toContain('');
    expect(new Set(ids).size).toBe(3);
    expect(idOf('a', 'b')).toBe(ids[0]);
  });
});

describe('tooNarrow', () => {
  it('tooNarrow names the width that would do', () => {
    const error = tooNarrow(200, 320.2, '16 holes');
    expect(error).toMatchObject({ code: 'NUMBER_RANGE', value: 200, nearest: '321' });
    expect(error.message).toContain('16 holes');
  });
});
