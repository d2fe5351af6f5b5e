import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody } from '../arbitraries.fixture.js';
import { play } from './play.fixture.js';
import { type ScoreOptions, scoreLine } from './score-line.js';

const blues = makeChart('basic', 'G');
const two = makeChart(parseForm('| I7 | IV7 |'), 'G');

function remarksOn(line: string, on = two, options: ScoreOptions = {}): readonly string[] {
  return scoreLine(play(line), on, { swing: 1, ...options })
    .feedback.filter(({ code }) => code !== 'LITTLE_TO_JUDGE' && code !== 'BARS_NOT_PLAYED')
    .map(({ code, bar, beat, name }) => `${code} ${bar}:${beat} ${name}`);
}

describe('feedback of scoreLine', () => {
  it.each([
    ['nothing on chord tones', 'G4@0 B4@1 C5@4 E5@5', []],
    ['a landing on a note outside', 'G4@0 F4@4 E5@6', ['LANDED_OUTSIDE 2:1 F4']],
    ['a clash in the middle of a bar', 'G4@0 F#4@2 C5@4', ['CLASH 1:3 F#4']],
    ['an unresolved note on a beat', 'G4@0 C5@2 C5@4', ['UNRESOLVED 1:3 C5']],
    ['no unresolved note between beats', 'G4@0 C5@2.5/0.5 C5@4', []],
    ['no note that resolves', 'G4@0 C5@2 B4@3 C5@4', []],
    ['no colour and no blue note', 'G4@0 E5@2 Bb4@3 C5@4', []],
    ['a change that is not shown', 'G4@0 G4@4', ['CHANGE_NOT_SHOWN 2:1 null']],
    ['a landing once, though it clashes', 'G4@0 B4@4/2 E5@6', ['LANDED_OUTSIDE 2:1 B4']],
    ['each of two clashes', 'G4@0 F#4@1 F#4@2.5 C5@4', ['CLASH 1:2 F#4', 'CLASH 1:3.5 F#4']],
    ['what is held into a clash', 'B4@2/4 E5@6', ['LANDED_OUTSIDE 2:1 B4']],
  ])('feedback of scoreLine has %s', (_, line, expected) => {
    expect(remarksOn(line)).toEqual(expected);
  });

  it('feedback of scoreLine counts what it says of the whole line', () => {
    const { feedback } = scoreLine(play('G4@0 D5@48 D5@50'), blues);
    expect(feedback.map(({ code, count }) => [code, count])).toEqual([
      ['NOTES_OUTSIDE_CHART', 2],
      ['BARS_NOT_PLAYED', 11],
      ['LITTLE_TO_JUDGE', 1],
    ]);
  });

  it('feedback of scoreLine leaves LITTLE_TO_JUDGE out from where confidence reaches 0.8', () => {
    const counts = [10, 25, 26, 27, 40].map((count) => {
      const words = Array.from({ length: count }, (_, at) => `G4@${at * 1.5}`);
      const { confidence, feedback } = scoreLine(play(words.join(' ')), blues);
      expect(feedback.some(({ code }) => code === 'LITTLE_TO_JUDGE')).toBe(confidence < 0.8);
      return confidence;
    });
    expect(counts[0]).toBeLessThan(0.8);
    expect(counts.at(-1)).toBeGreaterThan(0.8);
  });

  it('feedback of scoreLine suggests on the harp, at the level and in the dialect asked for', () => {
    const on = (options: ScoreOptions) =>
      scoreLine(play('G4@0 G4@4/2 F#4@6.5'), makeChart(parseForm('| I7 | V7 |'), 'G'), {
        swing: 1,
        ...options,
      }).feedback[0]?.suggestion;
    const harp = makeHarp('C');
    expect(on({ harp, level: 'natural' })).toMatchObject({ name: 'D4', tab: '-1' });
    expect(on({ harp, level: 'bends' })).toMatchObject({ name: 'F#4', tab: "-2'" });
    expect(on({ harp, level: 'natural', dialect: 'arrow' })?.tab).not.toBe('-1');
    expect(on({})).toMatchObject({ name: 'F#4', tab: null, sounding: null });
  });

  it('feedback of scoreLine calls clashing and unresolved what is so classed', () => {
    const KIND = new Map<string, string>([
      ['CLASH', 'clash'],
      ['UNRESOLVED', 'unresolved'],
    ]);
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { feedback, notes } = scoreLine(line, chart);
        for (const { code, index, chord, bar, beat } of feedback) {
          const kind = KIND.get(code);
          if (kind === undefined) continue;
          expect(notes).toContainEqual(
            expect.objectContaining({ index, chord, bar, beat, class: kind }),
          );
        }
      }),
    );
  });

  it('feedback of scoreLine on a change says what the change says', () => {
    const SAID = new Map<string, object>([
      ['LANDED_OUTSIDE', { landing: 0 }],
      ['CHANGE_NOT_SHOWN', { shown: false }],
    ]);
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { feedback, changes } = scoreLine(line, chart);
        for (const { code, index, chord, bar, beat } of feedback) {
          const said = SAID.get(code);
          if (said === undefined) continue;
          expect(changes).toContainEqual(
            expect.objectContaining({ index, chord, bar, beat, ...said }),
          );
        }
      }),
    );
  });

  it('feedback of scoreLine leaves no clash and no landing outside unsaid', () => {
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { feedback, notes, changes } = scoreLine(line, chart);
        const said = new Set(feedback.map(({ index, chord }) => `${index} ${chord}`));
        const due = [
          ...notes.filter((note) => note.class === 'clash'),
          ...changes.filter(({ landing }) => landing === 0),
        ];
        const unsaid = due.filter(({ index, chord }) => !said.has(`${index} ${chord}`));
        expect(unsaid).toEqual([]);
      }),
    );
  });
});
