import { type Hole, makeHarp, soundings } from '@reedplate/layout';
import { isReedplateError, TWELVE_KEYS } from '@reedplate/pitch';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { TAB_DIALECT_IDS } from './dialects.js';
import { formatSounding, formatTab } from './format-tab.js';
import { parseTab } from './parse-tab.js';
import { soundMark } from './sound-tab.js';
import type { TabMark } from './tab-mark.js';

const mark: fc.Arbitrary<TabMark> = fc
  .record({
    hole: fc.integer({ min: 1, max: 16 }).map((hole) => hole as Hole),
    breath: fc.constantFrom('blow' as const, 'draw' as const),
    bend: fc.integer({ min: 0, max: 5 }),
    over: fc.boolean(),
  })
  .map((parts) => ({ ...parts, bend: parts.over ? 0 : parts.bend }));
const events = fc.array(fc.array(mark, { minLength: 1, maxLength: 4 }), { minLength: 1 });
const dialects = fc.constantFrom(...TAB_DIALECT_IDS);

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
});
