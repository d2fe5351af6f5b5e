import { describe, expect, expectTypeOf, test } from 'vitest';
import { TAB_DIALECT_IDS, TAB_DIALECTS, type TabDialectId } from './dialects.js';
import { formatSounding, formatTab } from './format-tab.js';
import { markOf, type TabMark } from './tab-mark.js';

const draw3: TabMark = { hole: 3, breath: 'draw', bend: 2, over: false };
const blow6: TabMark = { hole: 6, breath: 'blow', bend: 0, over: true };

describe('formatTab', () => {
  // Signs, arrows and letters for breath: common practice, no source.
  test.each([
    ['plus-minus', "(-3''+6o) -3''"],
    ['arrows', "(3↓''6↑°) 3↓''"],
    ['blow-draw', "(3D''6Bo) 3D''"],
    ['exhale-inhale', "(3i''6eo) 3i''"],
    ['plus-only', "(3'' 6+o) 3''"],
    ['underlined', "(3̲'' 6o) 3̲''"],
  ] as const)('formatTab writes the %s dialect', (dialect, expected) => {
    expect(formatTab([[draw3, blow6], [draw3]], { dialect })).toBe(expected);
  });

  test('formatTab writes signs unless told', () => {
    expect(formatTab([[draw3]])).toBe("-3''");
  });
});

describe('formatSounding', () => {
  test('formatSounding writes an overdraw on a draw and a valved bend as a bend', () => {
    const over = { hole: 7, breath: 'draw', technique: 'overdraw', depth: 1 } as const;
    const valved = { hole: 4, breath: 'blow', technique: 'valved-bend', depth: 1 } as const;
    expect(formatSounding(over)).toBe('-7o');
    expect(formatSounding(valved)).toBe("+4'");
  });

  test('formatSounding refuses an unknown dialect', () => {
    const natural = { hole: 4, breath: 'blow', technique: 'natural', depth: 0 } as const;
    // @ts-expect-error: no such dialect
    expect(() => formatSounding(natural, { dialect: 'toString' })).toThrowError(/arrow/u);
  });
});

describe('markOf', () => {
  test('markOf gives an overbend no bend', () => {
    const over = { hole: 6, breath: 'blow', technique: 'overblow', depth: 1 } as const;
    expect(markOf(over)).toEqual(blow6);
  });
});

describe('TAB_DIALECTS', () => {
  test('TAB_DIALECTS lists every dialect under its own id', () => {
    expect([...TAB_DIALECT_IDS].sort()).toEqual(Object.keys(TAB_DIALECTS).sort());
    for (const id of TAB_DIALECT_IDS) expect(TAB_DIALECTS[id].id).toBe(id);
    expectTypeOf<TabDialectId>().toEqualTypeOf<
      'plus-minus' | 'arrows' | 'blow-draw' | 'exhale-inhale' | 'plus-only' | 'underlined'
    >();
  });
});
