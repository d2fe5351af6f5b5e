import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { isReedplateError } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { lineOfTab, tabOfLine } from './line-of-tab.js';
import { formatTimedTab, parseTimedTab } from './timed-tab.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const harp = makeHarp('C');

describe('parseTimedTab', () => {
  test('parseTimedTab reads lengths whole, as fractions and as decimals; a beat without one', () => {
    const beats = parseTimedTab("-2 -2:2 -3':1/2 (-1-2):1.5 r:3 [+4 +5]:1/3").map(
      (each) => each.beats,
    );
    expect(beats).toEqual([1, 2, 0.5, 1.5, 3, 1 / 3]);
  });

  test('parseTimedTab reads rests, bar lines and other dialects', () => {
    const timed = parseTimedTab('| 4↑ r 4↓:2 |\n| R:2 |', { dialect: 'arrows' });
    expect(timed.map(({ marks }) => marks[0]?.breath)).toEqual([
      'blow',
      undefined,
      'draw',
      undefined,
    ]);
  });

  test.each([
    ['-2:0', 1, 1],
    ['-2:10001', 1, 1],
    ['-2:1/0', 1, 1],
    ['-2\n  x:2', 2, 3],
    ['-2 (-1 y):2', 1, 8],
    ['', 1, 1],
  ])('parseTimedTab of %j names line %i, column %i', (text, line, column) => {
    expect(() => parseTimedTab(text)).toThrowError(
      expect.objectContaining({ code: 'TAB_SYNTAX', where: { line, column } }),
    );
  });

  test('parseTimedTab says where a word stood that only its dialect forbids', () => {
    expect(() => parseTimedTab('4↑\n  4↓:2 -4:1', { dialect: 'arrows' })).toThrowError(
      expect.objectContaining({ code: 'TAB_SYNTAX', where: { line: 2, column: 8 } }),
    );
  });

  test('parseTimedTab reads each word where it stands, not the text before it again', () => {
    // Words that are all unlike, on lines of their own: ten times as many took a hundred times as long.
    const text = Array.from({ length: 20_000 }, (_, at) => `-2:${at + 1}/8000`).join('\n');
    const begun = performance.now();
    expect(parseTimedTab(text).length).toBe(20_000);
    expect(performance.now() - begun).toBeLessThan(10_000);
  });

  test('parseTimedTab gives marks or a typed error for arbitrary text', () => {
    const text = fc.string({ unit: fc.constantFrom(...":/.-+12 ()'or|\n&[]") });
    fc.assert(
      fc.property(text, (wild) => {
        try {
          expect(parseTimedTab(wild).length).toBeGreaterThan(0);
        } catch (error) {
          expect(isReedplateError(error) && error.code).toBe('TAB_SYNTAX');
        }
      }),
      { numRuns: 500 },
    );
  });
});

describe('lineOfTab and tabOfLine', () => {
  test('lineOfTab counts in felt beats and keeps thirds exact', () => {
    const timed = parseTimedTab('-2:1/3 -2:1/3 -2:1/3 +4');
    expect(lineOfTab(timed, harp).notes.map(({ start }) => start)).toEqual([0, 320, 640, 960]);
    expect(lineOfTab(timed, harp, { metre: '12/8' }).notes[3]?.start).toBe(1440);
  });

  test('lineOfTab keeps title, tempo and pickup', () => {
    const options = { title: 'Riff', tempo: 90, pickup: 960 } as const;
    expect(lineOfTab(parseTimedTab('-2'), harp, options)).toMatchObject(options);
  });

  test('tabOfLine takes the plainest way, and cuts chords to what tab can hold', () => {
    const line = makeLine([
      { start: 0, duration: 960, pitch: 67 },
      { start: 960, duration: 1920, pitch: 60 },
      { start: 960, duration: 960, pitch: 64 },
      { start: 2400, duration: 480, pitch: 70 },
    ]);
    expect(formatTimedTab(tabOfLine(line, harp))).toBe("-2 (+1+2) r:1/2 -3':1/2");
  });

  test('tabOfLine says which note a harp does not have', () => {
    const low = makeLine([{ start: 0, duration: 960, pitch: 40 }]);
    expect(() => tabOfLine(low, harp)).toThrowError(/"E2" cannot be sounded/u);
    const later = makeLine(low.notes.map((note) => ({ ...note, start: 2 * 3840 })));
    expect(() => tabOfLine(later, harp)).toThrowError(
      expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE', value: 'E2', where: { bar: 3 } }),
    );
  });

  test('lineOfTab undoes tabOfLine for lines of one note at a time', () => {
    const step = fc.record({
      rest: fc.nat({ max: 3 }),
      length: fc.integer({ min: 1, max: 40 }),
      pitch: fc.integer({ min: 60, max: 96 }),
    });
    fc.assert(
      fc.property(fc.array(step, { minLength: 1, maxLength: 12 }), (steps) => {
        let at = 0;
        const notes = steps.map(({ rest, length, pitch }) => {
          const start = at + rest * 60;
          at = start + length * 60;
          return { start, duration: length * 60, pitch };
        });
        const line = makeLine(notes);
        const text = formatTimedTab(tabOfLine(line, harp, { level: 'overbends' }));
        expect(lineOfTab(parseTimedTab(text), harp)).toEqual(line);
      }),
    );
  });
});
