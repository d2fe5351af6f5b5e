import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeFeedback } from './describe-feedback.js';
import { describeVerdict } from './describe-verdict.js';
import { FAULT_CODES } from './faults.js';
import { barsInWords } from './in-words.js';
import { remark } from './remark.js';
import type { ChordSuggestion, FeedbackCode } from './score-types.js';

const at = { bars: [3], beat: 2.3333333, chord: 'G7', index: 4, name: 'F#4', by: 1 } as const;
const say = (code: FeedbackCode, details: Parameters<typeof remark>[1] = {}): string =>
  describeFeedback(remark(code, { ...at, ...details }));

const suggestion: ChordSuggestion = {
  chord: 'G7',
  pitch: 65,
  name: 'F4',
  degree: 'b7',
  sounding: null,
  tab: "-2''",
};

const CODES: readonly FeedbackCode[] = [
  ...FAULT_CODES,
  'BARS_NOT_PLAYED',
  'NOTES_OUTSIDE_CHART',
  'LITTLE_TO_JUDGE',
  'TIME_LOOSE',
  'TIME_BEHIND',
  'TIME_AHEAD',
  'TIME_RUSHES',
  'TIME_DRAGS',
  'SWING_STIFF',
  'SWING_WIDE',
  'NOTE_KEPT',
  'LANDED_OUTSIDE',
  'CLASH',
  'UNRESOLVED',
  'CHANGE_NOT_SHOWN',
];

describe('describeFeedback', () => {
  it('describeFeedback says every code in a sentence of its own, without statistics', () => {
    const sentences = CODES.map((code) => say(code));
    expect(new Set(sentences).size).toBe(CODES.length);
    expect(say('CLASH')).toBe('bar 3, just after beat 2: F#4 clashes with G7');
    for (const said of sentences) expect(said).not.toMatch(/confiden|shuffl|chance|average/u);
  });

  it('describeFeedback says several places by their bars', () => {
    expect(say('NOTE_KEPT', { bars: [5, 6, 10], count: 3, chord: 'C7', name: 'G4' })).toBe(
      'bars 5, 6 and 10: you kept G4 over C7',
    );
  });

  it('describeFeedback names what to play instead, with tab where there is a harp', () => {
    const suggestions = [suggestion];
    expect(say('CLASH', { suggestions })).toContain("try F4, the flat seventh (-2'')");
    expect(say('CLASH', { suggestions: [{ ...suggestion, tab: null }] })).toMatch(
      /; try F4, the flat seventh$/u,
    );
  });

  it('describeFeedback names a cure for each chord that is passed over', () => {
    const suggestions = [
      { ...suggestion, chord: 'C7', name: 'C5', degree: '1', tab: '+4' },
      { ...suggestion, chord: 'D7', name: 'D5', degree: '1', tab: '-4' },
    ] as const;
    const details = { bars: [5, 6, 9, 10, 12], chord: null, suggestions };
    expect(say('STAYS_ON_ONE_CHORD', details)).toBe(
      'bars 5, 6, 9, 10 and 12: you stay on one chord while the chords move; over C7 play C5, the root (+4), over D7 play D5, the root (-4)',
    );
    const [, missed] = suggestions;
    expect(say('CHORD_MISSED', { bars: [9, 12], chord: 'D7', suggestions: [missed] })).toBe(
      'bars 9 and 12: D7 is played as if the first chord went on; play D5, the root (-4)',
    );
  });

  it('describeFeedback counts in the singular and plural', () => {
    expect(say('LITTLE_TO_JUDGE')).toContain('1 note ');
    expect(say('LITTLE_TO_JUDGE', { count: 2 })).toContain('2 notes ');
    expect(say('TAKE_BARS_LATE', { by: 2 })).toContain('2 bars late');
    expect(say('TAKE_BEATS_EARLY')).toContain('1 beat early');
    expect(say('TAKE_OTHER_HARP', { by: -1 })).toContain('1 semitone too low');
  });

  it.each([
    [1, 'beat 1'],
    [2.01, 'beat 2'],
    [2.12, 'beat 2'],
    [2 + 1 / 8, 'just after beat 2'],
    [2.2, 'just after beat 2'],
    [1.25, 'just after beat 1'],
    [4 + 1 / 3, 'just after beat 4'],
    [1.36, 'just after beat 1'],
    [1 + 3 / 8, 'the and of 1'],
    [1.4, 'the and of 1'],
    [3.5, 'the and of 3'],
    [2 + 2 / 3, 'the and of 2'],
    [2.7, 'the and of 2'],
    [1.72, 'the end of beat 1'],
    [1.75, 'the end of beat 1'],
    [4.99, 'the end of beat 4'],
  ])('describeFeedback says beat %s as "%s"', (beat, said) => {
    const text = say('CHANGE_NOT_SHOWN', { bars: [7], beat });
    expect(text).toBe(`bar 7, ${said}: nothing played shows the change to G7`);
  });

  it('describeFeedback never prints a part of a beat as a figure', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 33, noNaN: true }), (beat) => {
        expect(say('CLASH', { beat })).not.toMatch(/\d\.\d/u);
        expect(say('CLASH', { beat })).toMatch(/^bar 3, (?:the and of|.*beat) \d+: /u);
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
    const suggestions = [{ ...suggestion, degree, tab: null }];
    expect(say('CLASH', { suggestions })).toMatch(new RegExp(`try F4, the ${said}$`, 'u'));
  });
});

describe('barsInWords', () => {
  it.each([
    [[5], 'bar 5'],
    [[5, 6], 'bars 5 and 6'],
    [[5, 6, 10], 'bars 5, 6 and 10'],
    [[1, 2, 3, 4, 9], 'bars 1 to 4 and 9'],
    [[1, 2, 3, 7, 8, 9], 'bars 1 to 3 and 7 to 9'],
  ])('barsInWords says %j as "%s"', (bars, said) => {
    expect(barsInWords(bars)).toBe(said);
  });
});

describe('describeVerdict', () => {
  it('describeVerdict counts the bars by which a take would fit', () => {
    const said = (code: 'TAKE_BARS_LATE' | 'TAKE_BARS_EARLY', by: number) =>
      describeVerdict({ code, by, otherHarp: null });
    expect(said('TAKE_BARS_LATE', 1)).toMatch(/1 bar late: a bar earlier/u);
    expect(said('TAKE_BARS_LATE', 2)).toMatch(/2 bars late: 2 bars earlier/u);
    expect(said('TAKE_BARS_EARLY', 1)).toMatch(/1 bar early: a bar later/u);
    expect(said('TAKE_BARS_EARLY', 2)).toMatch(/2 bars early: 2 bars later/u);
  });

  it('describeVerdict says every code in a sentence of its own, for a student', () => {
    const codes = [
      ...FAULT_CODES,
      'BARS_NOT_PLAYED',
      'TOO_LITTLE_TO_JUDGE',
      'FOLLOWS_EVERY_CHANGE',
      'FOLLOWS_WELL',
      'FOLLOWS_IN_PART',
      'HARDLY_FOLLOWS',
    ] as const;
    const said = codes.map((code) => describeVerdict({ code, by: 1, otherHarp: null }));
    expect(new Set(said).size).toBe(codes.length);
    for (const sentence of said) {
      expect(sentence).toMatch(/[.?]$/u);
      expect(sentence).not.toMatch(/confiden|shuffl|chance|average/u);
    }
  });

  it('describeVerdict and describeFeedback name the right harp', () => {
    const otherHarp = { fits: 'A', key: 'G', held: 'D', take: 'C' } as const;
    expect(describeVerdict({ code: 'TAKE_OTHER_HARP', by: 2, otherHarp })).toBe(
      'Your notes fit A, and the song is in G: wrong harp. Take the C harp.',
    );
    expect(say('TAKE_OTHER_HARP', { by: 2, otherHarp })).toBe(
      'everything lies 2 semitones too high, as on the D harp: take the C harp, where the same holes are right',
    );
  });

  it('describeVerdict names the chord that is missing, and a count-in that was recorded', () => {
    expect(describeVerdict({ code: 'CHORD_MISSED', by: 7, otherHarp: null })).toContain(
      'the V chord',
    );
    expect(describeVerdict({ code: 'CHORD_MISSED', by: 5, otherHarp: null })).toContain(
      'the IV chord',
    );
    expect(describeVerdict({ code: 'TAKE_BARS_LATE', by: 2, otherHarp: null })).toContain(
      'count-in of 2 bars',
    );
  });
});
