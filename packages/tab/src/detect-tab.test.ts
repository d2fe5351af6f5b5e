import { makeHarp } from '@reedplate/layout';
import { ReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { dialects, eventsOf } from './arbitraries.fixture.js';
import { detectTab } from './detect-tab.js';
import { TAB_DIALECT_IDS, type TabDialectId } from './dialects.js';
import { formatTab } from './format-tab.js';
import { parseTab } from './parse-tab.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

describe('detectTab', () => {
  test.each([
    ["+4 -4 5 -3''", 'plus-minus'],
    ["4↑ 3↓''", 'arrows'],
    ['↑4 ↓4', 'arrows'],
    ["4B 3D''", 'blow-draw'],
    ['4e 456i', 'exhale-inhale'],
    ["4+ 4 3''", 'plus-only'],
    ['4 4\u0332', 'underlined'],
  ])('detectTab of %j finds %s, without doubt', (text, dialect) => {
    expect(detectTab(text)).toMatchObject({ dialect, ambiguous: false, others: [], question: '' });
  });

  test('detectTab says what plain numbers leave open, with both readings', () => {
    const guess = detectTab('4 5 6');
    expect(guess).toMatchObject({ dialect: 'plus-minus', ambiguous: true });
    expect(guess.others.map(({ dialect }) => dialect)).toEqual(['plus-only']);
    expect(guess.events[0]?.[0]?.breath).toBe('blow');
    expect(guess.others[0]?.events[0]?.[0]?.breath).toBe('draw');
    expect(guess.question).toMatch(/blow \(plus-minus\) or draw \(plus-only\)/u);
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

  test('detectTab names the written dialect where both a blow and a draw are marked', () => {
    const both = eventsOf(makeHarp('C')).filter(
      (line) => new Set(line.flat().map(({ breath }) => breath)).size === 2,
    );
    const marked = fc.constantFrom<TabDialectId>(
      'plus-minus',
      'arrows',
      'blow-draw',
      'exhale-inhale',
    );
    fc.assert(
      fc.property(both, marked, (line, dialect) => {
        const guess = detectTab(formatTab(line, { dialect }));
        expect([guess.dialect, guess.events]).toEqual([dialect, line]);
      }),
    );
  });

  test('detectTab is ambiguous just where another dialect reads other events', () => {
    fc.assert(
      fc.property(eventsOf(makeHarp('C')), dialects, (line, dialect) => {
        const text = formatTab(line, { dialect });
        const readings = new Set(TAB_DIALECT_IDS.flatMap((id) => readingOf(text, id)));
        const guess = detectTab(text);
        expect(guess.ambiguous).toBe(readings.size > 1);
        expect(guess.others.length).toBe(readings.size - 1);
        expect(guess.question === '').toBe(readings.size === 1);
      }),
    );
  });

  test('detectTab says its question in words of the two readings', () => {
    expect(detectTab('4').question).toBe(
      'are plain numbers blow (plus-minus) or draw (plus-only)?',
    );
    expect(detectTab('4+ 4').question).toBe('');
    // An overbend written out is one in every dialect: the number after it is what is open.
    expect(detectTab('OB6 4').question).toBe(
      'are plain numbers blow (plus-minus) or draw (plus-only)?',
    );
  });

  test('detectTab reads for a harp of ten holes, unless it is told another', () => {
    const holesOf = (text: string, options = {}): readonly number[] | undefined =>
      detectTab(text, options).events[0]?.map(({ hole }) => hole);
    expect(holesOf('-10')).toEqual([10]);
    expect(holesOf('-12')).toEqual([1, 2]);
    expect(holesOf('-12', { holes: 12 })).toEqual([12]);
    expect(() => detectTab('-11')).toThrowError(
      expect.objectContaining({
        code: 'TAB_SYNTAX',
        expected: expect.stringContaining('holes from 1 to 10 with'),
      }),
    );
  });

  test('detectTab says where the dialect that reads farthest stops, in lines and then in columns', () => {
    const stop = (text: string): unknown => {
      try {
        return detectTab(text);
      } catch (error) {
        return error instanceof ReedplateError ? error.where : error;
      }
    };
    expect(stop('4↑ 4↓ 4↑\n?')).toEqual({ line: 2, column: 1 });
    expect(stop('4↑ 4↓ 4↑ ?')).toEqual({ line: 1, column: 10 });
    expect(stop('4B 3D\n4B ?\n-2')).toEqual({ line: 2, column: 4 });
    expect(stop('-2 +4 ?\n4B')).toEqual({ line: 1, column: 7 });
  });

  test('detectTab keeps what a word says once, however often a text says it', () => {
    const { events, others } = detectTab('4 -5 4 -5 4');
    expect([events[2], events[4], events[3]]).toEqual([events[0], events[0], events[1]]);
    expect(events[2] === events[0] && events[3] === events[1]).toBe(true);
    expect(others).toEqual([]);
  });

  test('detectTab tells readings apart by each of hole, breath, bend and overbend', () => {
    expect(detectTab('10').others.map(({ events }) => events[0]?.[0]?.breath)).toEqual(['draw']);
    expect(detectTab("4'").others.length).toBe(1);
    expect(detectTab('4 5').others[0]?.events.length).toBe(2);
  });

  test('detectTab gives frozen data', () => {
    const guess = detectTab('4 5');
    expect([guess, guess.others, guess.events].every(Object.isFrozen)).toBe(true);
  });
});

/** What a dialect reads, as text; nothing where it reads none. */
function readingOf(text: string, dialect: TabDialectId): readonly string[] {
  try {
    return [JSON.stringify(parseTab(text, { dialect, holes: 10 }))];
  } catch {
    return [];
  }
}
