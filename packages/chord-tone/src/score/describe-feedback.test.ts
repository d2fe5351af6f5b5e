import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeFeedback } from './describe-feedback.js';
import type { Feedback } from './score-types.js';

describe('describeFeedback', () => {
  const at: Feedback = {
    code: 'CLASH',
    bar: 3,
    beat: 2.3333333,
    chord: 'G7',
    index: 4,
    name: 'F#4',
    count: 1,
    suggestion: null,
  };

  it('describeFeedback says every code in a sentence of its own', () => {
    const codes = [
      'LANDED_OUTSIDE',
      'CLASH',
      'UNRESOLVED',
      'CHANGE_NOT_SHOWN',
      'NOTES_OUTSIDE_CHART',
      'BARS_NOT_PLAYED',
      'LITTLE_TO_JUDGE',
    ] as const;
    const sentences = codes.map((code) => describeFeedback({ ...at, code }));
    expect(new Set(sentences).size).toBe(codes.length);
    expect(sentences[1]).toBe('bar 3, just after beat 2: F#4 clashes with G7');
  });

  it('describeFeedback names what to play instead, with tab where there is a harp', () => {
    const suggestion = {
      pitch: 65,
      name: 'F4',
      degree: 'b7',
      sounding: null,
      tab: "-2''",
    } as const;
    expect(describeFeedback({ ...at, suggestion })).toContain("try F4, the flat seventh (-2'')");
    expect(describeFeedback({ ...at, suggestion: { ...suggestion, tab: null } })).toContain(
      'try F4, the flat seventh',
    );
  });

  it('describeFeedback counts notes in the singular and plural', () => {
    expect(describeFeedback({ ...at, code: 'LITTLE_TO_JUDGE' })).toContain('1 note ');
    expect(describeFeedback({ ...at, code: 'LITTLE_TO_JUDGE', count: 2 })).toContain('2 notes ');
    expect(describeFeedback({ ...at, code: 'BARS_NOT_PLAYED' })).toContain('in 1 bar:');
    expect(describeFeedback({ ...at, code: 'BARS_NOT_PLAYED', count: 8 })).toContain('in 8 bars:');
  });

  it.each([
    [1, 'beat 1'],
    [2.01, 'beat 2'],
    [2.12, 'beat 2'],
    [1.25, 'just after beat 1'],
    [4 + 1 / 3, 'just after beat 4'],
    [3.5, 'the and of 3'],
    [2 + 2 / 3, 'the and of 2'],
    [2.7, 'the and of 2'],
    [1.75, 'the end of beat 1'],
    [4.99, 'the end of beat 4'],
  ])('describeFeedback says beat %s as "%s"', (beat, said) => {
    const text = describeFeedback({ ...at, code: 'CHANGE_NOT_SHOWN', bar: 7, beat });
    expect(text).toBe(`bar 7, ${said}: nothing played shows the change to G7`);
  });

  it('describeFeedback never prints a part of a beat as a figure', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 33, noNaN: true }), (beat) => {
        expect(describeFeedback({ ...at, beat })).not.toMatch(/\d\.\d/u);
        expect(describeFeedback({ ...at, beat })).toMatch(/^bar 3, (?:the and of|.*beat) \d+: /u);
      }),
    );
  });

  it.each([
    ['1', 'root'],
    ['b3', 'flat third'],
    ['3', 'third'],
    ['b7', 'flat seventh'],
    ['7', 'major seventh'],
    ['5', '5'],
  ] as const)('describeFeedback calls the degree %s the %s', (degree, said) => {
    const suggestion = { pitch: 60, name: 'C4', degree, sounding: null, tab: null } as const;
    expect(describeFeedback({ ...at, suggestion })).toMatch(
      new RegExp(`try C4, the ${said}$`, 'u'),
    );
  });
});
