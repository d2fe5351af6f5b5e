import { makeChart, parseForm } from '@reedplate/form';
import { makeHarp } from '@reedplate/layout';
import { makeLine } from '@reedplate/line';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyChart, anyMelody } from '../arbitraries.fixture.js';
import { BEAT, play } from './play.fixture.js';
import { type ScoreOptions, scoreLine } from './score-line.js';

const blues = makeChart('basic', 'G');
const two = makeChart(parseForm('| I7 | IV7 |'), 'G');
const OF_THE_TAKE = ['LITTLE_TO_JUDGE', 'BARS_NOT_PLAYED', 'STAYS_ON_ONE_CHORD'];

/** Short takes are faulty as a whole too: what is said of that is left out here. */
function remarksOn(line: string, options: ScoreOptions = {}): readonly string[] {
  return scoreLine(play(line), two, { swing: 1, ...options })
    .feedback.filter(({ code }) => !OF_THE_TAKE.includes(code))
    .map(({ code, bars, beat, name }) => `${code} ${bars.join()}:${beat} ${name}`);
}

describe('remarks on notes', () => {
  it.each([
    ['nothing on chord tones', 'G4@0 B4@1 C5@4 E5@5', []],
    ['a landing on a note outside', 'G4@0 B4@1 F4@4 E5@6', ['LANDED_OUTSIDE 2:1 F4']],
    ['a clash in the middle of a bar', 'G4@0 F#4@2 C5@4', ['CLASH 1:3 F#4']],
    ['an unresolved note on a beat', 'G4@0 C5@2 C5@4', ['UNRESOLVED 1:3 C5']],
    ['no unresolved note between beats', 'G4@0 C5@2.5/0.5 C5@4', []],
    ['no note that resolves', 'G4@0 C5@2 B4@3 C5@4', []],
    ['no colour', 'G4@0 E5@2 C5@4', []],
    ['two clashes of one note as one', 'G4@0 F#4@1 F#4@2.5 C5@4', ['CLASH 1:2 F#4']],
    ['a note struck again over the change', 'G4@0 B4@3/0.9 B4@4/2 E5@6', ['NOTE_KEPT 2:1 B4']],
    ['a change that what is played does not tell', 'G4@0 G4@4', ['CHANGE_NOT_SHOWN 2:1 null']],
    ['a note held into a clash', 'G4@0 B4@2/4 E5@6', ['NOTE_KEPT 2:1 B4']],
  ])('remarks on notes have %s', (_, line, expected) => {
    expect(remarksOn(line)).toEqual(expected);
  });

  it('remarks on notes put bars where the same happens into one', () => {
    const bars = [4, 5, 9].map((bar) => `Eb5@${bar * 4}/2`).join(' ');
    const roots = [0, 1, 2, 3, 6, 7, 10].map((bar) => `G4@${bar * 4}/3.9`).join(' ');
    const take = play(`${roots} D5@32/3.9 D5@44/3.9 ${bars}`);
    const { feedback } = scoreLine(take, blues, { swing: 1 });
    const outside = feedback.filter(({ name }) => name === 'Eb5');
    expect(outside.map(({ code, bars: where }) => [code, where])).toContainEqual([
      'LANDED_OUTSIDE',
      [5, 10],
    ]);
  });

  it('remarks on notes are about notes so classed, and landings so scored', () => {
    const KIND = new Map<string, string>([
      ['CLASH', 'clash'],
      ['UNRESOLVED', 'unresolved'],
    ]);
    fc.assert(
      fc.property(anyMelody, anyChart, (line, chart) => {
        const { feedback, notes, changes } = scoreLine(line, chart);
        for (const { code, index, chord, bars, beat } of feedback) {
          const kind = KIND.get(code);
          const here = { index, chord, bar: bars[0], beat };
          if (kind !== undefined) {
            expect(notes).toContainEqual(expect.objectContaining({ ...here, class: kind }));
          }
          if (code === 'LANDED_OUTSIDE' || code === 'NOTE_KEPT') {
            expect(changes).toContainEqual(expect.objectContaining({ ...here, landing: 0 }));
          }
        }
      }),
    );
  });
});

describe('remarks on the whole take', () => {
  /** A root for every bar, late by beats. */
  const roots = (late = 0, up = 0) =>
    makeLine(
      blues.spans
        .map(({ start, chord }) => ({
          start: start + late * BEAT,
          duration: 3 * BEAT,
          pitch: 60 + up + (chord?.tones[0]?.pitchClass ?? 0),
        }))
        .filter(({ start }) => start >= 0 && start < 48 * BEAT),
    );
  const first = (line: ReturnType<typeof roots>, options: ScoreOptions = {}) =>
    scoreLine(line, blues, options).feedback[0];

  it('remarks on the whole take come first, and no note is blamed for them', () => {
    const { feedback } = scoreLine(roots(4), blues);
    expect(feedback[0]).toMatchObject({ code: 'TAKE_BARS_LATE', by: 1 });
    expect(feedback.map(({ code }) => code)).not.toContain('LANDED_OUTSIDE');
  });

  it('remarks on the whole take give the cure as tab at the level of the player', () => {
    const tonic = makeLine(blues.spans.map(({ start }) => ({ start, duration: 1920, pitch: 67 })));
    const cures = (options: ScoreOptions) =>
      first(tonic, options)?.suggestions.map(({ chord, degree, tab }) => [chord, degree, tab]);
    const harp = makeHarp('C');
    expect(cures({ harp })).toEqual([
      ['C7', '1', '+4'],
      ['D7', '1', '-4'],
    ]);
    expect(cures({ harp, level: 'natural', dialect: 'arrows' })?.[1]?.[2]).toBe('4↓');
    expect(cures({})).toEqual([
      ['C7', '1', null],
      ['D7', '3', null],
    ]);
  });

  it('remarks on the whole take name silent bars, and notes without a chord', () => {
    const { feedback } = scoreLine(play('G4@0 B4@1 D5@2 F5@3 G4@4'), blues);
    expect(feedback[0]).toMatchObject({ code: 'BARS_NOT_PLAYED', count: 10 });
    const broken = makeChart(parseForm('| I7 | N.C. |'), 'G');
    expect(scoreLine(play('G4@0 B4@1 D5@5 D5@7'), broken).feedback).toContainEqual(
      expect.objectContaining({ code: 'NOTES_OUTSIDE_CHART', count: 2 }),
    );
  });

  it('remarks on the whole take say of few notes that they are few', () => {
    const counts = [4, 10, 20, 40, 60].map((count) => {
      const words = Array.from({ length: count }, (_, at) => `G4@${at * 0.75}/0.5`);
      const { feedback, fault } = scoreLine(play(words.join(' ')), blues);
      // Who stays on one note is told so, and not that the notes are few.
      if (fault !== null) return feedback.every(({ code }) => code !== 'LITTLE_TO_JUDGE');
      return feedback.some(({ code }) => code === 'LITTLE_TO_JUDGE') === count < 23;
    });
    expect(counts).toEqual([true, true, true, true, true]);
  });
});

describe('remarks on time', () => {
  /** Beats of a chorus, each moved by what a function of its place says, in beats. */
  const beats = (late: (beat: number) => number) =>
    makeLine(
      Array.from({ length: 48 }, (_, beat) => ({
        start: Math.max(0, Math.round((beat + late(beat)) * BEAT)),
        duration: 700,
        pitch: 67,
      })),
    );
  const said = (line: ReturnType<typeof beats>, chart = blues) =>
    scoreLine(line, chart)
      .feedback.map(({ code }) => code)
      .filter((code) => /^(?:TIME|SWING)/u.test(code));

  it.each([
    ['nothing of an even take', () => 0, []],
    ['nothing of a little looseness', (beat: number) => ((beat * 7) % 5) / 100 - 0.02, []],
    ['behind', () => 0.12, ['TIME_BEHIND']],
    ['ahead', () => -0.12, ['TIME_AHEAD']],
    ['rushing', (beat: number) => -beat / 150, ['TIME_RUSHES']],
    ['dragging', (beat: number) => beat / 150, ['TIME_DRAGS']],
    ['loose', (beat: number) => (beat % 2 === 0 ? 0.09 : -0.09), ['TIME_LOOSE']],
  ])('remarks on time say %s', (_, late, codes) => {
    expect(said(beats(late))).toEqual(codes);
  });

  it('remarks on time hear stiff and wide swing in a shuffle, and not in written eighths', () => {
    const shuffle = { ...blues, feel: 'shuffle' as const };
    const swung = (ratio: number, human: number) =>
      makeLine(
        Array.from({ length: 96 }, (_, at) => ({
          start: Math.round(
            (Math.floor(at / 2) + (at % 2 === 0 ? 0 : ratio / (ratio + 1))) * BEAT +
              ((at * 37) % 11) * human,
          ),
          duration: 300,
          pitch: 67,
        })),
      );
    expect(said(swung(1.25, 4), shuffle)).toEqual(['SWING_STIFF']);
    expect(said(swung(2, 4), shuffle)).toEqual([]);
    expect(said(swung(1, 0), shuffle)).toEqual([]);
  });
});
