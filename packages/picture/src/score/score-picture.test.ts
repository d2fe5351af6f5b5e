import { describeVerdict, NOTE_CLASSES, type Score, scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import { lineOfTab, parseTimedTab } from '@reedplate/tab';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyLook } from '../arbitraries.fixture.js';
import { textBoxes, textComplaints } from '../text-boxes.fixture.js';
import { MARK_WORDS, markOfClass } from './class-marks.js';
import { landingOf } from './landing-marks.js';
import { scorePicture } from './score-picture.js';

const chart = makeChart('basic', 'G');
const take = (tab: string, pickup = 0) => lineOfTab(parseTimedTab(tab), makeHarp('C'), { pickup });

const anyTake = fc
  .record({
    pickup: fc.constantFrom(0, 480),
    gaps: fc.array(
      fc.tuple(fc.constantFrom(160, 240, 480, 960, 2880, 7680), fc.integer({ min: 55, max: 90 })),
      { minLength: 1, maxLength: 40 },
    ),
  })
  .map(({ pickup, gaps }) => {
    let start = 0;
    const notes = gaps.map(([duration, pitch]) => {
      const note = { start, duration, pitch };
      start += duration;
      return note;
    });
    return { notes, pickup };
  });

describe('scorePicture', () => {
  it('scorePicture keeps every text apart, readable and within the picture', () => {
    fc.assert(
      fc.property(anyTake, anyChart, anyLook, ({ notes, pickup }, any, look) => {
        const line = makeLine(notes, { metre: any.metre, pickup });
        const { svg } = scorePicture(scoreLine(line, any), any, look);
        expect(textComplaints(svg)).toEqual([]);
      }),
      { numRuns: 20 },
    );
  });

  it('scorePicture says of each bar how it went, what was struck and how its change landed', () => {
    const { text } = scorePicture(scoreLine(take("-2:4 -3':1 -3:3 r:8 +4:4"), chart), chart);
    const rows = text.split('\n');
    expect(rows[2]).toBe('bar 1 (G7): 100 %; G7 lands on the chord; G4 1 root');
    expect(rows[3]).toMatch(
      /^bar 2 \(G7\): \d+ %; Bb4 b3 blue, turn or colour; B4 3 third or seventh$/u,
    );
    expect(rows[4]).toBe('bar 3 (G7): rest');
    expect(rows[6]).toBe('bar 5 (C7): 100 %; C7 lands on the chord; C5 1 root');
  });

  it('scorePicture draws a mark and a strip for every bar and note that counts', () => {
    const score = scoreLine(take('-2:3 r -2:3 r -2:3 r -2:3 r +4:4'), chart);
    const { svg } = scorePicture(score, chart);
    const texts = textBoxes(svg).map((box) => box.text);
    expect(texts.filter((text) => /^bar \d+$/u.test(text))).toHaveLength(score.bars.length);
    expect(texts.filter((text) => text === '1')).toHaveLength(5);
    // An outline of a strip for each bar that has notes.
    expect(svg.match(/<rect [^>]*stroke="#57534b"/gu)).toHaveLength(5);
  });

  it('scorePicture draws a note that is held over a bar line in both bars, and its mark once', () => {
    const { text } = scorePicture(scoreLine(take('r:2 -2:4'), chart), chart);
    expect(text.match(/G4 1 root/gu)).toHaveLength(1);
    const across = scorePicture(scoreLine(take('r:2 -2:4'), chart), chart, { bars: [2, 2] });
    expect(across.svg).toContain('stroke-width="2"');
    expect(across.text).toMatch(/^bar 2 \(G7\): 100 %$/mu);
  });

  it('scorePicture shows a pickup before bar 1, and only the bars asked for', () => {
    const shown = makeChart('basic', 'G', { pickup: 480 });
    const score = scoreLine(take('-2:1/2 -3:4 +3:4', 480), shown);
    expect(scorePicture(score, shown).text).toMatch(/^pickup: G4 /mu);
    const { text } = scorePicture(score, shown, { bars: [2, 3] });
    expect(text.match(/^bar \d+/gmu)).toEqual(['bar 2', 'bar 3']);
    expect(() => scorePicture(score, shown, { bars: [40, 41] })).toThrow(/bars that were judged/u);
  });

  it('scorePicture has words and a mark for every class of notes', () => {
    for (const noteClass of NOTE_CLASSES) {
      expect(MARK_WORDS[markOfClass(noteClass)]).not.toBe('');
      expect(['tone', 'fitting', 'outside']).toContain(landingOf({ class: noteClass }));
    }
    expect(landingOf({ class: null })).toBe('rest');
  });

  it('scorePicture tells in its description what a teacher would say first', () => {
    const score = scoreLine(take('-2:4 -2:4 -2:4 -2:4 -2:4 -2:4 -2:4 -2:4'), chart);
    const { description, text } = scorePicture(score, chart);
    expect(description.startsWith(describeVerdict(score.verdict))).toBe(true);
    expect(description).toContain(`${Math.round(score.total)} of 100; `);
    expect(text.split('\n')[1]).toBe(describeVerdict(score.verdict));
  });

  it.each([null, 7, {}, { notes: [] }])('scorePicture refuses %j in place of a score', (wrong) => {
    expect(() => scorePicture(wrong as unknown as Score, chart)).toThrow(/as scoreLine gives it/u);
  });
});
