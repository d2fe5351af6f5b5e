import {
  type Hole,
  makeHarp,
  soundings,
  soundingsOfPitch,
  TECHNIQUE_LEVELS,
} from '@reedplate/layout';
import { makeLine, parseMetre } from '@reedplate/line';
import { isReedplateError, type ReedplateError, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test, vi } from 'vitest';
import { dialects, eventsOf, harps, linesOf, timedOf } from './arbitraries.fixture.js';
import { TAB_DIALECT_IDS } from './dialects.js';
import { formatSounding, formatTab } from './format-tab.js';
import { lineOfTab, tabOfLine } from './line-of-tab.js';
import { parseTab } from './parse-tab.js';
import { soundMark } from './sound-tab.js';
import type { TabMark } from './tab-mark.js';
import { formatTimedTab, parseTimedTab } from './timed-tab.js';

// A busy machine takes its time over hundreds of cases.
vi.setConfig({ testTimeout: 60_000 });

const mark: fc.Arbitrary<TabMark> = fc
  .record({
    hole: fc.integer({ min: 1, max: 16 }).map((hole) => hole as Hole),
    breath: fc.constantFrom('blow' as const, 'draw' as const),
    bend: fc.integer({ min: 0, max: 5 }),
    over: fc.boolean(),
  })
  .map((parts) => ({ ...parts, bend: parts.over ? 0 : parts.bend }));
const events = fc.array(fc.array(mark, { minLength: 1, maxLength: 4 }), { minLength: 1 });

describe('laws of tablature', () => {
  test('parseTab undoes formatTab in every dialect', () => {
    fc.assert(
      fc.property(events, dialects, (line, dialect) => {
        expect(parseTab(formatTab(line, { dialect }), { dialect })).toEqual(line);
      }),
    );
  });

  test('parseTab gives events or a typed error for arbitrary text', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.string({ unit: fc.constantFrom(..."+-12 ()'o↑↓BD|\n″") }),
    );
    fc.assert(
      fc.property(text, dialects, (wild, dialect) => {
        try {
          expect(parseTab(wild, { dialect }).length).toBeGreaterThan(0);
        } catch (error) {
          expect(isReedplateError(error) && error.code).toBe('TAB_SYNTAX');
        }
      }),
    );
  });

  test('parseTab names the line and column of the first word that it cannot read, wherever that is', () => {
    const ends = fc.constantFrom(' ', '  ', '\n', '\r\n', ' |\n\t');
    fc.assert(
      fc.property(events, events, dialects, ends, (before, after, dialect, end) => {
        const good = before.map((event) => formatTab([event], { dialect }) + end).join('');
        const text = `${good}?? ${formatTab(after, { dialect })}`;
        const lines = good.split(/\r?\n/u);
        const where = { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
        for (const read of [parseTab, parseTimedTab]) {
          expect(() => read(text, { dialect })).toThrowError(
            expect.objectContaining({ code: 'TAB_SYNTAX', where }),
          );
        }
      }),
    );
  });

  test('parseTab passes over bar lines, spaces and ends of lines between events', () => {
    const between = fc.constantFrom(' ', '\n', ' | ', '|', '\r\n', '\t|\n| ');
    fc.assert(
      fc.property(events, dialects, between, (line, dialect, space) => {
        const text = line.map((event) => formatTab([event], { dialect })).join(space);
        expect(parseTab(`${space}${text}${space}`, { dialect })).toEqual(line);
      }),
    );
  });

  test('soundMark undoes formatSounding for all that a harp can sound, in every key', () => {
    for (const key of TWELVE_KEYS) {
      const harp = makeHarp(key.name);
      for (const sounding of soundings(harp, { level: 'overbends', valved: true })) {
        for (const dialect of TAB_DIALECT_IDS) {
          const [[read] = []] = parseTab(formatSounding(sounding, { dialect }), { dialect });
          expect(read && soundMark(read, harp, { valved: true })).toEqual(sounding);
        }
      }
    }
  });

  test('parseTab undoes formatTab for what any harp sounds, in every dialect', () => {
    const cases = harps.chain((harp) => eventsOf(harp).map((line) => ({ harp, line })));
    fc.assert(
      fc.property(cases, dialects, ({ harp, line }, dialect) => {
        const text = formatTab(line, { dialect });
        expect(parseTab(text, { dialect, holes: harp.holes.length })).toEqual(line);
      }),
      { numRuns: 300 },
    );
  });

  test('pitch to tablature to pitch is the identity for what a harp can sound, at every level', () => {
    const cases = harps.chain((harp) =>
      fc
        .constantFrom(...TECHNIQUE_LEVELS)
        .chain((level) =>
          fc
            .constantFrom(...soundings(harp, { level }).map(({ pitch }) => pitch))
            .map((pitch) => ({ harp, level, pitch })),
        ),
    );
    fc.assert(
      fc.property(cases, dialects, ({ harp, level, pitch }, dialect) => {
        const line = makeLine([{ start: 0, duration: 960, pitch }]);
        const text = formatTimedTab(tabOfLine(line, harp, { level }), { dialect });
        const back = parseTimedTab(text, { dialect, holes: harp.holes.length });
        expect(lineOfTab(back, harp)).toEqual(line);
      }),
      { numRuns: 300 },
    );
  });

  test('parseTab of what another dialect wrote reads the same holes, or refuses it', () => {
    fc.assert(
      fc.property(eventsOf(makeHarp('C')), dialects, dialects, (line, written, read) => {
        const text = formatTab(line, { dialect: written });
        try {
          const events = parseTab(text, { dialect: read, holes: 10 });
          expect(events.map((event) => event.map(({ hole }) => hole))).toEqual(
            line.map((event) => event.map(({ hole }) => hole)),
          );
        } catch (error) {
          expect(isReedplateError(error) && error.code).toBe('TAB_SYNTAX');
        }
      }),
      { numRuns: 300 },
    );
  });

  test('parseTab gives the same with bar lines, line ends and any white space between events', () => {
    const gap = fc.constantFrom(' ', '  ', '\t', '\n', '\r\n', ' | ', '\n| ');
    const gaps = fc.array(gap, { minLength: 12, maxLength: 12 });
    fc.assert(
      fc.property(eventsOf(makeHarp('C')), gaps, dialects, (line, between, dialect) => {
        const words = line.map((event) => formatTab([event], { dialect }));
        const text = words.map((word, at) => word + (between[at] ?? ' ')).join('');
        expect(parseTab(text, { dialect })).toEqual(line);
      }),
    );
  });

  test('parseTab names the line and column of the first word that it cannot read', () => {
    const bad = fc.constantFrom('?', 'x4', '-17', '--4', "4'o", '(-1', '0');
    const places = fc.tuple(fc.integer({ min: 1, max: 12 }), fc.constantFrom(' ', '\n'));
    fc.assert(
      fc.property(eventsOf(makeHarp('C')), bad, places, (line, word, [at, gap]) => {
        const words = line.map((event) => formatTab([event]));
        const before = words.slice(0, at).join(' ');
        const error = failure(() =>
          parseTab(`${before}${gap}${word} ${words.slice(at).join(' ')}`),
        );
        const from = gap === '\n' ? 1 : before.length + 2;
        expect(error).toMatchObject({ code: 'TAB_SYNTAX', where: { line: gap === '\n' ? 2 : 1 } });
        const { column = 0 } = (error as ReedplateError).where;
        expect(column).toBeGreaterThanOrEqual(from);
        expect(column).toBeLessThanOrEqual(from + word.length);
      }),
    );
  });

  test('every sign of a bend means as many semitones, alone and repeated', () => {
    const signs = fc.constantFrom("'", '’', '′', '/', 'b', '♭');
    fc.assert(
      fc.property(signs, fc.integer({ min: 1, max: 5 }), (sign, bend) => {
        expect(parseTab(`-3${sign.repeat(bend)}`)[0]?.[0]?.bend).toBe(bend);
      }),
    );
    expect(parseTab('-3″ -3‴ -3"').map(([mark]) => mark?.bend)).toEqual([2, 3, 2]);
  });
});

describe('laws of tablature with rhythm', () => {
  const cases = harps.chain((harp) => timedOf(harp).map((each) => ({ harp, ...each })));
  const lines = harps.chain((harp) => linesOf(harp).map((line) => ({ harp, line })));

  test('parseTimedTab undoes formatTimedTab for lengths of whole ticks in any metre', () => {
    fc.assert(
      fc.property(cases, dialects, ({ harp, timed, metre }, dialect) => {
        const text = formatTimedTab(timed, { dialect });
        const read = parseTimedTab(text, { dialect, holes: harp.holes.length });
        const { beatTicks } = parseMetre(metre);
        expect(read.map(({ marks }) => marks)).toEqual(timed.map(({ marks }) => marks));
        for (const [at, { beats }] of read.entries()) {
          expect(beats * beatTicks).toBeCloseTo((timed[at]?.beats ?? 0) * beatTicks, 6);
        }
      }),
      { numRuns: 300 },
    );
  });

  test('lineOfTab undoes tabOfLine through the text of every dialect, to the tick', () => {
    fc.assert(
      fc.property(lines, dialects, ({ harp, line }, dialect) => {
        const text = formatTimedTab(tabOfLine(line, harp, { level: 'overbends' }), { dialect });
        const timed = parseTimedTab(text, { dialect, holes: harp.holes.length });
        expect(lineOfTab(timed, harp, { metre: line.metre })).toEqual(line);
      }),
      { numRuns: 300 },
    );
  });

  test('tabOfLine takes no bend where an unbent note sounds, and no overbend where a bend does', () => {
    fc.assert(
      fc.property(lines, ({ harp, line }) => {
        const marks = tabOfLine(line, harp, { level: 'overbends' }).flatMap((each) => each.marks);
        for (const [at, mark] of marks.entries()) {
          const ways = soundingsOfPitch(harp, line.notes[at]?.pitch ?? 0, { level: 'overbends' });
          const isNatural = ways.some(({ technique }) => technique === 'natural');
          const isBend = ways.some(({ technique }) => technique === 'bend');
          if (isNatural) expect([mark.bend, mark.over]).toEqual([0, false]);
          else if (isBend) expect(mark.over).toBe(false);
        }
      }),
    );
  });

  test('tabOfLine has an event for each time that notes begin, whatever overlaps', () => {
    const note = fc.record({
      start: fc.nat({ max: 20 }).map((at) => at * 240),
      duration: fc.integer({ min: 1, max: 12 }).map((length) => length * 240),
      pitch: fc.constantFrom(60, 64, 67, 72, 76, 79),
    });
    fc.assert(
      fc.property(fc.array(note, { minLength: 1, maxLength: 10 }), (overlapping) => {
        const line = makeLine(overlapping);
        let at = 0;
        const begun = tabOfLine(line, makeHarp('C')).flatMap(({ marks, beats }) => {
          const start = Math.round(at * 960);
          at += beats;
          return marks.length === 0 ? [] : [start];
        });
        expect(begun).toEqual([...new Set(line.notes.map(({ start }) => start))]);
      }),
    );
  });
});

function failure(run: () => unknown): unknown {
  try {
    return run();
  } catch (error) {
    return error;
  }
}
