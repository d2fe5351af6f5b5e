import { makeHarp, soundings, TECHNIQUE_LEVELS } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bestPath } from './best-path.js';
import { eventsOf } from './line-events.js';
import { pathInPart } from './path-in-part.js';

const harp = makeHarp('C');
const anyLine = fc
  .array(fc.uniqueArray(fc.integer({ min: 55, max: 100 }), { minLength: 1, maxLength: 3 }), {
    minLength: 1,
    maxLength: 12,
  })
  .map((chords) =>
    makeLine(
      chords.flatMap((pitches, at) =>
        pitches.map((pitch) => ({ start: at * 480, duration: 480, pitch })),
      ),
    ),
  );

/** Lines of notes that the harp has, and of pairs of neighbouring holes: each can be played whole. */
const single = fc
  .constantFrom(...soundings(harp, { level: 'overbends' }))
  .map(({ pitch }) => [pitch]);
const pair = fc
  .tuple(fc.nat({ max: 8 }), fc.constantFrom('blow', 'draw'))
  .map(([at, breath]) => harp.holes.slice(at, at + 2).map((hole) => hole[breath]));
const wholeLine = fc
  .array(fc.oneof(single, pair), { minLength: 1, maxLength: 12 })
  .map((chords) =>
    makeLine(
      chords.flatMap((pitches, at) =>
        pitches.map((pitch) => ({ start: at * 480, duration: 480, pitch })),
      ),
    ),
  );

describe('pathInPart', () => {
  test('pathInPart sounds each event by its pitches, or says that the harp lacks it', () => {
    fc.assert(
      fc.property(anyLine, fc.constantFrom(...TECHNIQUE_LEVELS), (line, level) => {
        const { soundings: sounding, missing } = pathInPart(line, harp, { level });
        const lacking = new Set(missing.map(({ event }) => event));
        for (const [at, { pitches }] of eventsOf(line).entries()) {
          const sounded = (sounding[at] ?? []).map(({ pitch }) => pitch);
          expect([...sounded].sort((a, b) => a - b)).toEqual(lacking.has(at) ? [] : pitches);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('pathInPart is the best path of a line that the harp has whole', () => {
    fc.assert(
      fc.property(wholeLine, (line) => {
        const path = bestPath(line, harp, { level: 'overbends' });
        expect(pathInPart(line, harp, { level: 'overbends' })).toEqual({
          soundings: path.playable && path.soundings,
          missing: [],
        });
      }),
      { numRuns: 40 },
    );
  });

  test('pathInPart tells every event that is missing, with its bar and the reason', () => {
    const notes = [67, 20, 67, 63].map((pitch, at) => ({ start: at * 3840, duration: 960, pitch }));
    const apart = [
      { start: 15360, duration: 960, pitch: 60 },
      { start: 15360, duration: 960, pitch: 62 },
    ];
    const { missing, soundings: sounding } = pathInPart(makeLine([...notes, ...apart]), harp, {
      level: 'bends',
    });
    expect(missing.map(({ event, bar, obstacle }) => [event, bar, obstacle])).toEqual([
      [1, 2, 'out-of-range'],
      [3, 4, 'beyond-level'],
      [4, 5, 'no-grip'],
    ]);
    expect(sounding.map(({ length }) => length)).toEqual([1, 0, 1, 0, 0]);
  });

  test('pathInPart refuses an empty line and an option that there is none of', () => {
    expect(() => pathInPart(makeLine([]), harp)).toThrow(/note/u);
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    expect(() => pathInPart(line, harp, { levle: 'bends' } as object)).toThrow(/level/u);
  });
});
