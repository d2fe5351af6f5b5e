import { makeChart, parseForm } from '@reedplate/form';
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

  it('linePicture says N.C. where a chart has no chord, and keeps texts apart there', () => {
    const broken = makeChart(parseForm('I7 | N.C. | V7 | N.C.'), 'G');
    const line = lineOfTab(parseTimedTab('-2:4 -3:4 -4:4 -2:4'), harp);
    const { svg, text } = linePicture(line, harp, { chart: broken });
    expect(text).toContain('bar 2 (N.C.): -3 on beat 1 for 4');
    expect(textComplaints(svg)).toEqual([]);
  });

  it('linePicture shows a line of which the harp has nothing, each note as ?', () => {
    const line = makeLine([0, 960].map((start) => ({ start, duration: 960, pitch: 20 })));
    const { svg, description } = linePicture(line, harp);
    expect(textBoxes(svg).filter(({ text }) => text === '?')).toHaveLength(2);
    expect(description).toContain('cannot sound 2 of them');
  });

  it('linePicture takes fewer bars a row at 320 px than lets labels stand over one another', () => {
    const { line, steps } = practiceLine(chart, harp, { kind: 'arpeggios' });
    const soundings = steps.map((step) => step.soundings);
    const heightsOf = (width: number): number => {
      const boxes = textBoxes(linePicture(line, harp, { chart, soundings, width }).svg);
      return new Set(boxes.filter(({ text }) => /^[-+]\d/u.test(text)).map(({ top }) => top)).size;
    };
    // One height a row of bars: three rows of four, or more and shorter ones.
    expect(heightsOf(680)).toBe(3);
    const { svg } = linePicture(line, harp, { chart, soundings, width: 320 });
    const bars = textBoxes(svg).filter(({ text }) => /^bar \d+$/u.test(text));
    expect(heightsOf(320)).toBe(new Set(bars.map(({ top }) => top)).size);
    expect(heightsOf(320)).toBeGreaterThan(3);
  });

  it('linePicture sets tab of eighths on one height, two bars a row on paper', () => {
    const eighths = makeLine(
      Array.from({ length: 32 }, (_, at) => ({ start: at * 480, duration: 480, pitch: 67 })),
    );
    const boxes = textBoxes(linePicture(eighths, harp, { width: 680 }).svg);
    const heights = boxes.filter(({ text }) => /^[-+]\d/u.test(text)).map(({ top }) => top);
    expect(heights).toHaveLength(32);
    expect(new Set(heights).size).toBe(2);
  });

  it('linePicture rather sets tab on two heights than a row for every bar', () => {
    const sixteenths = makeLine(
      Array.from({ length: 64 }, (_, at) => ({ start: at * 240, duration: 240, pitch: 67 })),
    );
    const boxes = textBoxes(linePicture(sixteenths, harp, { width: 680 }).svg);
    const bars = boxes.filter(({ text }) => /^bar \d+$/u.test(text));
    expect(bars).toHaveLength(4);
    expect(new Set(bars.map(({ top }) => top)).size).toBe(2);
  });

  it('linePicture draws only the bars asked for, a pickup among them as bar 0', () => {
    const line = lineOfTab(parseTimedTab('-2:4 -3:4 -4:4 -5:4'), harp);
    expect(linePicture(line, harp, { bars: [2, 3] }).text.match(/^bar \d+/gmu)).toEqual([
      'bar 2',
      'bar 3',
    ]);
    const up = makeLine(
      [0, 480].map((start) => ({ start, duration: 480, pitch: 67 })),
      { pickup: 480 },
    );
    expect(linePicture(up, harp, { bars: [0, 0] }).text.split('\n')[1]).toMatch(/^pickup: /u);
  });

  it('linePicture marks breath by shape: as many triangles up as blow notes, down as draw notes', () => {
    const line = lineOfTab(parseTimedTab('+4 +4 -4 +4 -4:2'), harp);
    const { svg } = linePicture(line, harp);
    const triangles = [...svg.matchAll(/<path d="M[-\d.]+ ([-\d.]+)L[-\d.]+ ([-\d.]+)L[^"]*Z"/gu)];
    const up = triangles.filter(([, tip, foot]) => Number(tip) < Number(foot)).length;
    // One more of each is the sign of the legend.
    expect([up, triangles.length - up]).toEqual([3 + 1, 2 + 1]);
  });
});
