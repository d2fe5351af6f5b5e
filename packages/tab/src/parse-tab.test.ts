import { isReedplateError } from '@reedplate/pitch';
import { describe, expect, test } from 'vitest';
import { parseTab } from './parse-tab.js';

const blow = (hole: number, bend = 0, over = false) => ({ hole, breath: 'blow', bend, over });
const draw = (hole: number, bend = 0, over = false) => ({ hole, breath: 'draw', bend, over });

function failure(text: string, options?: Parameters<typeof parseTab>[1]): unknown {
  try {
    return parseTab(text, options);
  } catch (error) {
    return error;
  }
}

describe('parseTab', () => {
  test('parseTab reads signs, bends and overbends', () => {
    expect(parseTab("+4 -4 -3''' 8' +6o -7°")).toEqual([
      [blow(4)],
      [draw(4)],
      [draw(3, 3)],
      [blow(8, 1)],
      [blow(6, 0, true)],
      [draw(7, 0, true)],
    ]);
  });

  test('parseTab reads a number without sign as a blow', () => {
    expect(parseTab('4 10')).toEqual([[blow(4)], [blow(10)]]);
  });

  test('parseTab reads printed minus signs and primes as plain ones', () => {
    expect(parseTab('−2″ –3‴ -4′ -4’')).toEqual([
      [draw(2, 2)],
      [draw(3, 3)],
      [draw(4, 1)],
      [draw(4, 1)],
    ]);
  });

  test('parseTab reads chords in brackets, with or without spaces inside', () => {
    expect(parseTab('(-1-2-3) ( +4 +5 )')).toEqual([
      [draw(1), draw(2), draw(3)],
      [blow(4), blow(5)],
    ]);
  });

  test('parseTab passes over bar lines and line ends', () => {
    expect(parseTab('| -2 | +4 |\r\n-4')).toEqual([[draw(2)], [blow(4)], [draw(4)]]);
  });

  test('parseTab reads arrows and letters when asked', () => {
    expect(parseTab("4↑ 3↓'' 6↑°", { dialect: 'arrows' })).toEqual([
      [blow(4)],
      [draw(3, 2)],
      [blow(6, 0, true)],
    ]);
    expect(parseTab("4B 3D''", { dialect: 'blow-draw' })).toEqual([[blow(4)], [draw(3, 2)]]);
  });

  test.each([
    ["-3' -3/ -3b -3♭", 1],
    ["-3'' -3// -3bb -3\" -3″", 2],
    ["-3''' -3/// -3‴", 3],
  ])('parseTab of %j reads every sign of a bend by %i', (text, bend) => {
    for (const event of parseTab(text)) expect(event).toEqual([draw(3, bend)]);
  });

  test('parseTab reads overbends by sign and in prose', () => {
    expect(parseTab('6Bo 6B° 6OB OB6 7OD', { dialect: 'blow-draw' })).toEqual([
      [blow(6, 0, true)],
      [blow(6, 0, true)],
      [blow(6, 0, true)],
      [blow(6, 0, true)],
      [draw(7, 0, true)],
    ]);
  });

  test('parseTab reads chords as digits together, in brackets, and joined', () => {
    const chord = [draw(4), draw(5)];
    for (const text of ['-45', '(-4-5)', '(-4 -5)', '[-4-5]', '(-4, -5)', '-4&-5']) {
      expect(parseTab(text)).toEqual([chord]);
    }
    expect(parseTab('456i', { dialect: 'exhale-inhale' })).toEqual([[draw(4), draw(5), draw(6)]]);
    expect(parseTab('-910')).toEqual([[draw(9), draw(10)]]);
  });

  test('parseTab reads digits together as a hole where the harp has it', () => {
    expect(parseTab('-12')).toEqual([[draw(12)]]);
    expect(parseTab('-12', { holes: 10 })).toEqual([[draw(1), draw(2)]]);
    expect(parseTab('-10', { holes: 10 })).toEqual([[draw(10)]]);
    expect(failure('-12', { holes: 17 })).toMatchObject({ code: 'NUMBER_RANGE' });
  });

  test('parseTab reads plus as blow and a plain number as draw where asked', () => {
    expect(parseTab("4+ 4 3'' 8'+ 8+' 6o+", { dialect: 'plus-only' })).toEqual([
      [blow(4)],
      [draw(4)],
      [draw(3, 2)],
      [blow(8, 1)],
      [blow(8, 1)],
      [blow(6, 0, true)],
    ]);
  });

  test('parseTab reads underlined numbers as draw where asked', () => {
    expect(parseTab("4 4\u0332 1\u03320\u0332 3\u0332'", { dialect: 'underlined' })).toEqual([
      [blow(4)],
      [draw(4)],
      [draw(10)],
      [draw(3, 1)],
    ]);
    expect(failure('1\u03320', { dialect: 'underlined' })).toMatchObject({ code: 'TAB_SYNTAX' });
  });

  test.each([
    ['-2 x -4', 1, 4],
    ["-45'", 1, 1],
    ['-46', 1, 1],
    ['-4&', 1, 4],
    ['-2\n-4 -17', 2, 4],
    ['-2 -4-5', 1, 4],
    ['(-1-2', 1, 1],
    ['()', 1, 2],
    ["+6'o", 1, 1],
    ['', 1, 1],
    ['-0', 1, 1],
    ['(-1 -x)', 1, 5],
  ])('parseTab of %j names line %i, column %i', (text, line, column) => {
    const error = failure(text);
    expect(isReedplateError(error)).toBe(true);
    expect(error).toMatchObject({ code: 'TAB_SYNTAX', where: { line, column } });
  });

  test('parseTab says which holes the harp has where it cannot read on', () => {
    expect(failure('x')).toMatchObject({
      expected: expect.stringMatching(/^holes from 1 to 16 /u),
    });
    for (const text of ['', 'x', '-5', '-2 (-1?)']) {
      const expected = expect.stringMatching(/^holes from 1 to 4 with their breath: /u);
      expect(failure(text, { holes: 4 })).toMatchObject({ code: 'TAB_SYNTAX', expected });
    }
  });

  test('parseTab refuses an unknown dialect with the nearest one', () => {
    // @ts-expect-error: no such dialect
    const error = failure('4', { dialect: 'arow' });
    expect(error).toMatchObject({ code: 'OPTION_UNKNOWN', value: 'arow', nearest: 'arrows' });
  });

  test.each([undefined, null, 4, ['-4']])('parseTab refuses %j, which is no text', (text) => {
    expect(() => parseTab(text as never)).toThrow(
      expect.objectContaining({ code: 'TAB_SYNTAX', where: { line: 1, column: 1 } }),
    );
  });
});
