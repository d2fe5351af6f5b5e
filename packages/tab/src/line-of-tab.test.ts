import { makeHarp, soundings, TUNINGS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lineOfTab, tabOfLine } from './line-of-tab.js';
import { formatTimedTab, parseTimedTab } from './timed-tab.js';

const harp = makeHarp('C');
const textOf = (...given: Parameters<typeof tabOfLine>): string =>
  formatTimedTab(tabOfLine(...given));

describe('lineOfTab', () => {
  test('lineOfTab reads a bend of the lower reed as a valved bend where the harp has valves', () => {
    const bend = parseTimedTab("+3'");
    expect(() => lineOfTab(bend, harp)).toThrow(
      expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE' }),
    );
    expect(lineOfTab(bend, harp, { valved: true }).notes[0]?.pitch).toBe(66);
  });

  test('lineOfTab counts felt beats: a beat of 12/8 is three eighths', () => {
    const timed = parseTimedTab('-2 r:2 +4:1/3');
    const starts = (metre: '4/4' | '12/8') =>
      lineOfTab(timed, harp, { metre }).notes.map(({ start, duration }) => [start, duration]);
    expect(starts('4/4')).toEqual([
      [0, 960],
      [2880, 320],
    ]);
    expect(starts('12/8')).toEqual([
      [0, 1440],
      [4320, 480],
    ]);
  });

  test.each([
    ['no list', 'marks'],
    ['a list of what is no tablature', [1]],
    ['marks that are no list', [{ marks: '-2', beats: 1 }]],
    ['no beats', [{ marks: [], beats: 0 }]],
  ])('lineOfTab refuses %s', (_, timed) => {
    expect(() => lineOfTab(timed as never, harp)).toThrow(
      expect.objectContaining({ code: expect.stringMatching(/^TAB_SYNTAX|NUMBER_RANGE$/u) }),
    );
  });
});

describe('tabOfLine', () => {
  const line = makeLine([
    { start: 0, duration: 960, pitch: 67 },
    { start: 960, duration: 960, pitch: 72 },
  ]);

  test('tabOfLine writes the soundings that a player chose, and the plainest for the others', () => {
    const blowThree = soundings(harp).filter(
      ({ hole, pitch, technique }) => hole === 3 && pitch === 67 && technique === 'natural',
    );
    expect(textOf(line, harp)).toBe('-2 +4');
    expect(textOf(line, harp, { soundings: [blowThree, []] })).toBe('+3 +4');
  });

  test.each([0, 1, 3])('tabOfLine refuses soundings for %i of two events', (count) => {
    const chosen = Array.from({ length: count }, () => []);
    expect(() => tabOfLine(line, harp, { soundings: chosen })).toThrow(
      expect.objectContaining({
        code: 'OPTION_UNKNOWN',
        value: count,
        expected: 'soundings for each of the 2 events of the line',
      }),
    );
  });

  test('tabOfLine says of a note that only overbends have that they have it', () => {
    const flatThird = makeLine([{ start: 0, duration: 960, pitch: 75 }]);
    const refused = (expected: string) =>
      expect.objectContaining({ code: 'SOUNDING_IMPOSSIBLE', value: 'Eb5', expected });
    expect(() => tabOfLine(flatThird, harp)).toThrow(
      refused('a note of this harp in C at the level of bends (overbends have it)'),
    );
    expect(() => tabOfLine(flatThird, harp, { level: 'natural' })).toThrow(
      refused('a note of this harp in C at the level of natural (overbends have it)'),
    );
    expect(textOf(flatThird, harp, { level: 'overbends' })).toBe('+4o');
  });

  test('tabOfLine gives on a harp of any tuning what sounds as the line', () => {
    const cases = fc.constantFrom(...TUNINGS).chain((tuning) => {
      const own = makeHarp('C', { tuning });
      const pitches = soundings(own, { level: 'bends' }).map(({ pitch }) => pitch);
      return fc.record({
        own: fc.constant(own),
        tune: fc.array(fc.constantFrom(...pitches), { minLength: 1, maxLength: 8 }),
      });
    });
    fc.assert(
      fc.property(cases, ({ own, tune }) => {
        const melody = makeLine(
          tune.map((pitch, at) => ({ start: at * 960, duration: 960, pitch })),
        );
        expect(lineOfTab(tabOfLine(melody, own), own)).toEqual(melody);
      }),
    );
  });
});
