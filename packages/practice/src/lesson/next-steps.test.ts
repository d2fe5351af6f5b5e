import { type Score, scoreLine } from '@reedplate/chord-tone';
import { makeChart } from '@reedplate/form';
import { makeLine } from '@reedplate/line';
import { describe, expect, it } from 'vitest';
import { nextSteps } from './next-steps.js';

describe('nextSteps', () => {
  const chart = makeChart('basic', 'G');
  const on = (pitchOf: (root: number) => number) =>
    scoreLine(
      makeLine(
        chart.spans.map(({ start, chord }) => ({
          start,
          duration: 1920,
          pitch: pitchOf(chord?.tones[0]?.pitchClass ?? 7),
        })),
      ),
      chart,
    );
  const roots = on((root) => (root < 7 ? 72 + root : 60 + root));

  it('nextSteps sends who stays on I to the roots', () => {
    const [first] = nextSteps([on(() => 67)]);
    expect(first).toMatchObject({ reason: 'stays-on-one-chord', exercise: 'roots-in-time' });
  });

  it('nextSteps names the weakest change and its bars', () => {
    // Roots everywhere but over V, where B clashes with nothing that the chord has.
    const steps = nextSteps([on((root) => (root === 2 ? 75 : root < 7 ? 72 + root : 60 + root))]);
    expect(steps.find(({ reason }) => reason === 'weak-change')).toMatchObject({
      about: 'D7',
      bars: [9, 12],
    });
  });

  it('nextSteps says in which bars notes hang', () => {
    // The fourth above each root: no tone of the chord, and it goes nowhere.
    const steps = nextSteps([on((root) => 65 + root)]);
    const { bars, words } = steps.find(({ reason }) => reason === 'unresolved') ?? {};
    expect(bars?.length).toBeGreaterThan(3);
    expect(words).toContain(`(bars ${bars?.join(', ')})`);
  });

  it.each([
    [-30, 'flat-bends', "The bend -4' lies 30 cents flat: hold it against its pitch, less deep."],
    [18, 'sharp-bends', "The bend -4' lies 18 cents sharp: hold it against its pitch, more deep."],
  ])('nextSteps drills a bend that lies %d cents off', (cents, reason, words) => {
    expect(nextSteps([roots], { bends: [{ tab: "-4'", cents }] })).toEqual([
      { reason, exercise: 'bend-drill', bars: [], about: "-4'", words },
    ]);
  });

  it('nextSteps lets a bend pass that lies within 15 cents', () => {
    expect(nextSteps([roots], { bends: [{ tab: "-4'", cents: 14 }] })[0]?.reason).toBe(
      'ready-for-more',
    );
  });

  /** The root of each chord, so many ticks after it begins; a beat is 960. */
  const played = (lateBy: number, isLeftOut: (bar: number) => boolean = () => false): Score =>
    scoreLine(
      makeLine(
        chart.spans
          .filter(({ bar }) => !isLeftOut(bar))
          .map(({ start, chord }) => ({
            start: Math.max(0, start + lateBy),
            duration: 1500,
            pitch: 60 + (chord?.tones[0]?.pitchClass ?? 7),
          })),
      ),
      chart,
    );

  it('nextSteps sends who lands late to an earlier breath, who lands early to counting', () => {
    expect(nextSteps([played(200)])).toEqual([
      {
        reason: 'late',
        exercise: 'roots-in-time',
        bars: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
        about: null,
        words: 'Landings come late: breathe earlier, and play one tempo slower.',
      },
    ]);
    expect(nextSteps([played(-200)])[0]).toMatchObject({
      reason: 'early',
      words: 'Landings come early: count the rests aloud, one tempo slower.',
    });
  });

  it('nextSteps sends who is now early, now late to clapping', () => {
    const notes = chart.spans.flatMap(({ start, chord }) =>
      [0, 960, 1920].map((beat) => ({ at: start + beat, chord })),
    );
    const take = makeLine(
      notes.map(({ at, chord }, index) => ({
        start: Math.max(0, at + (index % 2 === 0 ? -100 : 100)),
        duration: 500,
        pitch: 60 + (chord?.tones[0]?.pitchClass ?? 7),
      })),
    );
    expect(nextSteps([scoreLine(take, chart)])).toEqual([
      {
        reason: 'loose-time',
        exercise: 'roots-in-time',
        bars: [],
        about: null,
        words: 'The time is loose: clap the rhythm before you play it.',
      },
    ]);
  });

  it('nextSteps blames no chord for a change at which the take rests', () => {
    const resting = played(0, (bar) => bar === 5 || bar === 6);
    expect(resting.changes.find(({ bar }) => bar === 5)?.landing).toBeNull();
    expect(nextSteps([resting]).map(({ reason }) => reason)).toEqual(['ready-for-more']);
  });

  it('nextSteps sends who rests through most changes to the roots', () => {
    expect(nextSteps([played(0, (bar) => bar > 4)])[0]).toEqual({
      reason: 'silent-changes',
      exercise: 'roots-in-time',
      bars: [5, 7, 9, 10, 11, 12],
      about: null,
      words:
        'Most changes pass in silence (bars 5, 7, 9, 10, 11, 12): play the root of each chord as it comes.',
    });
  });

  it('nextSteps goes on where nothing is weak', () => {
    expect(nextSteps([roots]).map(({ reason }) => reason)).toEqual(['ready-for-more']);
  });

  it('nextSteps refuses no scores', () => {
    expect(() => nextSteps([])).toThrow(expect.objectContaining({ code: 'LIST_EMPTY' }));
    expect(() => nextSteps('none' as never)).toThrow(
      expect.objectContaining({ code: 'OPTION_UNKNOWN', value: 'none' }),
    );
  });
});
