import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { PRACTICE_KINDS, practiceLine } from '@reedplate/practice';
import { lineOfTab, parseTimedTab } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyHarp, anyLook } from '../arbitraries.fixture.js';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { linePicture } from './line-picture.js';

const harp = makeHarp('C');
const chart = makeChart('basic', 'G');

const anyLine = fc
  .record({
    metre: fc.constantFrom('4/4' as const, '12/8' as const, '3/4' as const, '5/4' as const),
    pickup: fc.constantFrom(0, 480),
    gaps: fc.array(
      fc.tuple(fc.constantFrom(120, 160, 240, 480, 960, 2880), fc.integer({ min: 55, max: 100 })),
      { minLength: 1, maxLength: 24 },
    ),
  })
  .map(({ metre, pickup, gaps }) => {
    let start = 0;
    const notes = gaps.map(([duration, pitch]) => {
      const note = { start, duration, pitch };
      start += duration;
      return note;
    });
    return makeLine(notes, { metre, pickup });
  });

describe('linePicture', () => {
  it('linePicture keeps every text apart, readable and within the picture', () => {
    fc.assert(
      fc.property(anyLine, anyHarp, anyLook, (line, any, look) => {
        expect(textComplaints(linePicture(line, any, look).svg)).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it.each(PRACTICE_KINDS)('linePicture draws practice lines of %s as they were chosen', (kind) => {
    const { line, steps } = practiceLine(chart, harp, { kind });
    const soundings = steps.map((step) => step.soundings);
    const { svg } = linePicture(line, harp, { chart, soundings });
    expect(textComplaints(svg)).toEqual([]);
    const tab = textBoxes(svg).filter(({ text }) => /^\(?[-+]/u.test(text));
    expect(tab).toHaveLength(steps.length);
  });

  it('linePicture draws blow notes above the middle and draw notes below', () => {
    const line = lineOfTab(parseTimedTab('+4:2 -4:2'), harp);
    const { svg } = linePicture(line, harp);
    const notes = [...svg.matchAll(/<rect x="[^"]*" y="([\d.]+)"[^>]*rx="4"/gu)].map(([, y]) =>
      Number(y),
    );
    expect(notes).toHaveLength(2);
    expect(notes[0]).toBeLessThan(notes[1] ?? 0);
  });

  it('linePicture says which notes the harp does not have', () => {
    const line = lineOfTab(parseTimedTab('-2:2 -4:2'), harp);
    const up = makeLine([...line.notes, { start: 3840, duration: 960, pitch: 63 }]);
    const { text, description } = linePicture(up, harp);
    expect(text).toContain('bar 2: ? on beat 1 for 1');
    expect(description).toContain('cannot sound 1 of them');
    expect(linePicture(makeLine([{ start: 0, duration: 960, pitch: 20 }]), harp).text).toContain(
      '?',
    );
  });

  it('linePicture writes chords over their bars, and a pickup before', () => {
    const line = makeLine(
      [
        { start: 0, duration: 480, pitch: 67 },
        { start: 480, duration: 3840, pitch: 71 },
      ],
      { pickup: 480 },
    );
    const { text } = linePicture(line, harp, { chart });
    expect(text.split('\n').slice(1)).toEqual([
      'pickup: +3 on beat 4.5 for 0.5',
      'bar 1 (G7): -3 on beat 1 for 4',
    ]);
  });

  it('linePicture refuses an empty line and soundings that are not one for each event', () => {
    expect(() => linePicture(makeLine([]), harp)).toThrow(/note/u);
    const line = makeLine([{ start: 0, duration: 960, pitch: 67 }]);
    expect(() => linePicture(line, harp, { soundings: [] })).toThrow(/each of the 1 events/u);
  });
});
