import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { detectTab } from './detect-tab.js';
import { TAB_DIALECT_IDS } from './dialects.js';
import { formatTab } from './format-tab.js';
import { parseTab } from './parse-tab.js';

describe('detectTab', () => {
  test.each([
    ["+4 -4 5 -3''", 'sign'],
    ["4↑ 3↓''", 'arrow'],
    ['↑4 ↓4', 'arrow'],
    ["4B 3D''", 'letter'],
    ['4e 456i', 'exhale'],
    ["4+ 4 3''", 'plus'],
    ['4 4\u0332', 'underline'],
  ])('detectTab of %j finds %s, without doubt', (text, dialect) => {
    expect(detectTab(text)).toMatchObject({ dialect, ambiguous: false, others: [], question: '' });
  });

  test('detectTab says what plain numbers leave open, with both readings', () => {
    const guess = detectTab('4 5 6');
    expect(guess).toMatchObject({ dialect: 'sign', ambiguous: true });
    expect(guess.others.map(({ dialect }) => dialect)).toEqual(['plus']);
    expect(guess.events[0]?.[0]?.breath).toBe('blow');
    expect(guess.others[0]?.events[0]?.[0]?.breath).toBe('draw');
    expect(guess.question).toMatch(/blow \(sign\) or draw \(plus\)/u);
  });

  test('detectTab takes 12 for a chord on ten holes, and for a hole on twelve', () => {
    expect(detectTab('-12').events[0]?.length).toBe(2);
    expect(detectTab('-12', { holes: 12 }).events[0]?.length).toBe(1);
  });

  test('detectTab of no dialect says where the best one stopped', () => {
    expect(() => detectTab('+4 -4 ?')).toThrowError(
      expect.objectContaining({ code: 'TAB_SYNTAX', where: { line: 1, column: 7 } }),
    );
    expect(() => detectTab('')).toThrowError(/TAB|tablature/u);
    expect(() => detectTab('4', { holes: 0 })).toThrowError(/holes of a harp/u);
  });

  test('detectTab finds the events of what formatTab wrote, or lists them among the others', () => {
    const mark = fc.record({
      hole: fc.constantFrom(1, 2, 3, 4, 10),
      breath: fc.constantFrom('blow' as const, 'draw' as const),
      bend: fc.nat({ max: 2 }),
      over: fc.constant(false),
    });
    const events = fc.array(fc.array(mark, { minLength: 1, maxLength: 3 }), { minLength: 1 });
    fc.assert(
      fc.property(events, fc.constantFrom(...TAB_DIALECT_IDS), (line, dialect) => {
        const text = formatTab(line as Parameters<typeof formatTab>[0], { dialect });
        const guess = detectTab(text);
        const readings = [guess, ...guess.others].map((reading) => reading.events);
        expect(readings).toContainEqual(parseTab(text, { dialect, holes: 10 }));
      }),
    );
  });
});
