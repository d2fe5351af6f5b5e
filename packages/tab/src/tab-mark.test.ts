import { makeHarp, soundings } from '@reedplate/layout';
import { describe, expect, test } from 'vitest';
import { formatTab } from './format-tab.js';
import { parseTab } from './parse-tab.js';
import { markOf, requireMark } from './tab-mark.js';

describe('markOf', () => {
  test('markOf gives for every sounding of a harp the mark that tablature reads back', () => {
    for (const sounding of soundings(makeHarp('C'), { level: 'overbends' })) {
      const mark = markOf(sounding);
      expect(parseTab(formatTab([[mark]]), { holes: 10 })).toEqual([[mark]]);
      expect([mark.hole, mark.breath]).toEqual([sounding.hole, sounding.breath]);
    }
  });

  test('markOf writes an overbend as one, and bends nothing besides', () => {
    const overblow = { hole: 6, breath: 'blow', technique: 'overblow', depth: 1 } as const;
    expect(markOf(overblow)).toEqual({ hole: 6, breath: 'blow', bend: 0, over: true });
  });

  test.each([
    [undefined, 'TAB_SYNTAX'],
    [{ hole: 4, breath: 'blow', technique: 'wah', depth: 0 }, 'OPTION_UNKNOWN'],
    [{ hole: 0, breath: 'blow', technique: 'natural', depth: 0 }, 'TAB_SYNTAX'],
    [{ hole: 4, breath: 'in', technique: 'natural', depth: 0 }, 'OPTION_UNKNOWN'],
  ])('markOf refuses %j', (sounding, code) => {
    expect(() => markOf(sounding as never)).toThrow(expect.objectContaining({ code }));
  });
});

describe('requireMark', () => {
  const mark = { hole: 4, breath: 'draw', bend: 1, over: false } as const;

  test('requireMark gives a mark back', () => {
    expect(requireMark(mark)).toBe(mark);
  });

  test.each([
    [{ hole: 17 }, 'TAB_SYNTAX'],
    [{ hole: 4.5 }, 'TAB_SYNTAX'],
    [{ bend: -1 }, 'TAB_SYNTAX'],
    [{ bend: '1' }, 'TAB_SYNTAX'],
    [{ breath: 'sideways' }, 'OPTION_UNKNOWN'],
    [{ over: 'no' }, 'TAB_SYNTAX'],
    [{ over: undefined }, 'TAB_SYNTAX'],
  ])('requireMark refuses a mark with %j', (wrong, code) => {
    expect(() => requireMark({ ...mark, ...wrong } as never)).toThrow(
      expect.objectContaining({ code }),
    );
  });
});
